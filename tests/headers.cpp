// Nothing but headers: see luft_test_headers in CMakeLists.txt.
#include <catch2/catch.hpp>

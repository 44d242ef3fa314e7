// The environment of a test.
#pragma once

#include <cstdlib>
#include <string>

namespace luft::test {

/// An environment variable for the time of a test.
class Set {
  public:
    Set(const char* name, const std::string& value) : name_(name) { setenv(name, value.c_str(), 1); }
    Set(const Set&) = delete;
    Set& operator=(const Set&) = delete;
    ~Set() { unsetenv(name_); }

  private:
    const char* name_;
};

} // namespace luft::test

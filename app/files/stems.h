// Names of files for labels, no two alike.
#pragma once

#include <set>
#include <string>

namespace luft::files {

class Stems {
  public:
    /// `plain`, or with "-2", "-3" … when it was taken before. "Anna" and "anna" count as one name: in some
    /// folders they are.
    std::string take(const std::string& plain);

  private:
    std::set<std::string> taken_;
};

} // namespace luft::files

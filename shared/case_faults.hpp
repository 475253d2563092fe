#pragma once
// The sources of a case and what is wrong in them: faults are collected and shown all at once, each with file, line,
// column, the line itself and a mark under the place.

#include <string>
#include <string_view>
#include <vector>

#include "shared/case_value.hpp"

namespace pulsewright {

struct CaseSource {
  std::string name;  // as shown: the path the user gave
  std::string text;
};

class CaseFaults {
 public:
  /// Takes a source and returns its index for Place.
  std::size_t add_source(std::string name, std::string text);
  const CaseSource& source(std::size_t index) const { return sources_.at(index); }
  std::size_t source_count() const { return sources_.size(); }

  void add(Place place, std::string message, std::string hint = {});
  bool empty() const { return faults_.empty(); }
  /// More have been found than anybody reads: what is added now is only counted.
  bool full() const { return faults_.size() >= most_kept; }

  /// "engine.toml:12"
  std::string line_of(Place place) const;

  /// Throws Error (case_file) with every fault, in the order of the files; does nothing if there is none.
  void throw_if_any() const;

 private:
  struct Fault {
    Place place;
    std::string message, hint;
  };
  std::string full_text(const Fault& fault) const;
  std::string excerpt(Place place) const;

  static constexpr std::size_t most_kept = 200;
  std::vector<CaseSource> sources_;
  std::vector<Fault> faults_;
  std::size_t not_kept_ = 0;
};

}  // namespace pulsewright

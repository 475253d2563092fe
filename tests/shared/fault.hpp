#pragma once
// What a piece of code says when it refuses.

#include <gtest/gtest.h>

#include <optional>
#include <string>

#include "shared/error.hpp"

namespace pulsewright {

struct Refusal {
  std::optional<ErrorKind> kind;  // nothing: it did not refuse
  std::string text;
};

template <class Code>
Refusal refusal_of(Code code) {
  try {
    code();
  } catch (const Error& error) {
    return {error.kind(), error.what()};
  }
  return {};
}

inline ::testing::AssertionResult says(const std::string& text, const std::string& part) {
  if (text.find(part) != std::string::npos) return ::testing::AssertionSuccess();
  return ::testing::AssertionFailure() << "'" << part << "' is not in:\n" << text;
}

}  // namespace pulsewright

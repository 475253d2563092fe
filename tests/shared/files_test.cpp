#include "shared/files.hpp"

#include <gtest/gtest.h>

#include "tests/shared/fault.hpp"
#include "tests/shared/scratch.hpp"

namespace pulsewright {
namespace {

TEST(Files, AnExistingFileStaysUnlessForced) {
  const ScratchFolder folder;
  write_text(folder / "page.html", "first", false);
  const Refusal refusal = refusal_of([&] { write_text(folder / "page.html", "second", false); });
  EXPECT_EQ(refusal.kind, ErrorKind::file);
  EXPECT_TRUE(says(refusal.text, "--force"));
  EXPECT_EQ(folder.read("page.html"), "first");
  write_text(folder / "page.html", "second", true);
  EXPECT_EQ(folder.read("page.html"), "second");
  EXPECT_EQ(folder.count(), 1U) << "a temporary file is left";
}

TEST(Files, AFileThatAppearsMeanwhileIsNotOverwritten) {
  const ScratchFolder folder;
  PendingFile pending(folder / "page.html", false);
  std::ofstream(pending.temporary()) << "ours";
  folder.write("page.html", "theirs");
  EXPECT_EQ(refusal_of([&] { pending.commit(); }).kind, ErrorKind::file);
  EXPECT_EQ(folder.read("page.html"), "theirs");
}

TEST(Files, WithoutCommitNothingIsLeft) {
  const ScratchFolder folder;
  {
    PendingFile pending(folder / "page.html", false);
    std::ofstream(pending.temporary()) << "half";
    EXPECT_EQ(folder.count(), 1U);
  }
  EXPECT_EQ(folder.count(), 0U);
}

TEST(Files, WhatCannotBeWrittenIsRefusedBefore) {
  const ScratchFolder folder;
  EXPECT_EQ(refusal_of([&] { check_writable(folder / "gone/page.html", true); }).kind, ErrorKind::file);
  EXPECT_EQ(refusal_of([&] { check_writable(folder / "", true); }).kind, ErrorKind::file);
  EXPECT_FALSE(refusal_of([&] { check_writable(folder / "page.html", false); }).kind.has_value());
}

TEST(Files, ReadingHasALimit) {
  const ScratchFolder folder;
  const auto path = folder.write("data", std::string("0123\0", 5));
  EXPECT_EQ(read_text(path, 5), std::string("0123\0", 5));
  EXPECT_EQ(refusal_of([&] { read_text(path, 4); }).kind, ErrorKind::file);
  EXPECT_EQ(refusal_of([&] { read_text("/dev/zero", 4); }).kind, ErrorKind::file);
}

}  // namespace
}  // namespace pulsewright

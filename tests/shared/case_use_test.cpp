// Files used by a case, the canonical text, and values set by address.
#include <gtest/gtest.h>

#include <random>

#include "shared/case_file.hpp"
#include "tests/shared/fault.hpp"
#include "tests/shared/scratch.hpp"

namespace pulsewright {
namespace {

constexpr const char* small_case = R"(
title = "Log"
[each_primary]
tube = "NPS 1-1/4 sch 10S"
[[primary]]
cylinder = 4
length = "300 mm"
[[primary]]
cylinder = 1
length = "310 mm"
[[joint]]
name = "merge"
throat = "48 mm"
[[joint]]
name = "tap"
[[wastegate]]
bore = "44 mm"
)";

Refusal refusal_of_load(const std::filesystem::path& path) {
  return refusal_of([&] { CaseFile::load(path); });
}

TEST(CaseUse, TheCasesOwnKeyWinsKeyByKey) {
  const ScratchFolder folder;
  folder.write("engine.toml",
               "[engine]\nbore = \"86 mm\"\nredline = 7500\n[engine.valve]\nhead = \"29 mm\"\nlift = \"9 mm\"\n");
  folder.write("turbo.toml", "[turbine]\nscrolls = 1\n[engine]\nrod = \"145 mm\"\n");
  CaseFile file = CaseFile::load(folder.write(
      "case.toml",
      "use = [\"engine.toml\", \"turbo.toml\"]\n[engine]\nredline = 8000\n[engine.valve]\nlift = \"10 mm\"\n"));
  const CaseTable engine = file.root().table("engine");
  EXPECT_EQ(engine.number("redline", above(0)), 8000);
  EXPECT_DOUBLE_EQ(*engine.quantity("bore", Dimension::length), 0.086);
  EXPECT_DOUBLE_EQ(*engine.quantity("rod", Dimension::length), 0.145);
  EXPECT_DOUBLE_EQ(*engine.table("valve").quantity("head", Dimension::length), 0.029);
  EXPECT_DOUBLE_EQ(*engine.table("valve").quantity("lift", Dimension::length), 0.010);
  EXPECT_EQ(file.root().table("turbine").count("scrolls", 1, 2), 1);
  EXPECT_NO_THROW(file.finish());
}

TEST(CaseUse, AListOfTablesReplacesAndNeverAdds) {
  const ScratchFolder folder;
  folder.write("base.toml", "[[primary]]\ncylinder = 1\n[[primary]]\ncylinder = 2\n");
  CaseFile file = CaseFile::load(folder.write("case.toml", "use = [\"base.toml\"]\n[[primary]]\ncylinder = 7\n"));
  const std::vector<CaseTable> primaries = file.root().tables("primary");
  ASSERT_EQ(primaries.size(), 1U);
  EXPECT_EQ(primaries[0].count("cylinder", 1, 16), 7);
}

TEST(CaseUse, ALaterFileIsLaidOverAnEarlierOne) {
  const ScratchFolder folder;
  folder.write("a.toml", "x = 1\n");
  folder.write("b.toml", "x = 2\n");
  CaseFile file = CaseFile::load(folder.write("case.toml", "use = [\"a.toml\", \"b.toml\"]\n"));
  EXPECT_EQ(file.root().number("x", above(0)), 2);
}

TEST(CaseUse, AFaultInAUsedFileNamesThatFile) {
  const ScratchFolder folder;
  folder.write("parts/engine.toml", "[engine]\n\nbore = \"450 K\"\n");
  CaseFile file = CaseFile::load(folder.write("case.toml", "use = [\"parts/engine.toml\"]\n"));
  file.root().table("engine").quantity("bore", Dimension::length);
  EXPECT_TRUE(says(refusal_of([&] { file.finish(); }).text, "engine.toml:3:8: '450 K' is a temperature"));
}

TEST(CaseUse, AMissingFileIsAFaultWithItsLine) {
  const ScratchFolder folder;
  const Refusal refusal =
      refusal_of_load(folder.write("case.toml", "title = \"x\"\nuse = [\"gone.toml\", \"lost.toml\"]\n"));
  EXPECT_EQ(refusal.kind, ErrorKind::case_file);
  EXPECT_TRUE(says(refusal.text, "case.toml:2:8: `use` of 'gone.toml': this file does not exist"));
  EXPECT_TRUE(says(refusal.text, "'lost.toml'"));
}

TEST(CaseUse, ACircleIsAFaultThatShowsTheCircle) {
  const ScratchFolder folder;
  folder.write("a.toml", "use = [\"b.toml\"]\n");
  folder.write("b.toml", "use = [\"./a.toml\"]\n");
  const Refusal refusal = refusal_of_load(folder / "a.toml");
  EXPECT_EQ(refusal.kind, ErrorKind::case_file);
  EXPECT_TRUE(says(refusal.text, "a.toml uses b.toml uses a.toml"));
  const Refusal self = refusal_of_load(folder.write("self.toml", "use = [\"self.toml\"]\n"));
  EXPECT_TRUE(says(self.text, "self.toml uses self.toml"));
}

TEST(CaseUse, FilesOutsideTheFolderAreRefused) {
  const ScratchFolder folder;
  for (const char* name : {"/etc/passwd", "../x.toml", "parts/../../x.toml", ""}) {
    const Refusal refusal = refusal_of_load(folder.write("case.toml", std::string("use = [\"") + name + "\"]\n"));
    EXPECT_EQ(refusal.kind, ErrorKind::case_file) << name;
    EXPECT_TRUE(says(refusal.text, "`use`")) << name;
  }
}

TEST(CaseUse, AUseThatIsNoListOfNamesIsAFault) {
  const ScratchFolder folder;
  for (const char* use : {"3", "[1]", "true", "{ a = 1 }"})
    EXPECT_EQ(refusal_of_load(folder.write("case.toml", std::string("use = ") + use + "\n")).kind, ErrorKind::case_file)
        << use;
  EXPECT_EQ(refusal_of([] { CaseFile::from_text("use = [\"a.toml\"]\n", "text"); }).kind, ErrorKind::case_file);
}

TEST(CaseUse, AManyfoldUseEndsInsteadOfExploding) {
  const ScratchFolder folder;
  folder.write("f0.toml", "x = 1\n");
  for (int i = 1; i < 40; ++i) {
    const std::string below = "\"f" + std::to_string(i - 1) + ".toml\"";
    folder.write("f" + std::to_string(i) + ".toml", "use = [" + below + ", " + below + "]\n");
  }
  EXPECT_TRUE(says(refusal_of_load(folder / "f39.toml").text, "more than 64 files"));
}

TEST(CaseLoad, AnEmptyOrBinaryOrBrokenFileIsAFault) {
  const ScratchFolder folder;
  const Refusal empty = refusal_of_load(folder.write("empty.toml", " \n\t\n"));
  EXPECT_EQ(empty.kind, ErrorKind::case_file);
  EXPECT_TRUE(says(empty.text, "this file is empty"));
  const Refusal binary = refusal_of_load(folder.write("binary.toml", std::string("\x7f"
                                                                                 "ELF\0\1\2",
                                                                                 7)));
  EXPECT_EQ(binary.kind, ErrorKind::case_file);
  EXPECT_TRUE(says(binary.text, "not a text file"));
  EXPECT_EQ(refusal_of_load(folder.write("latin.toml", "a = \"\xff\xfe\"\n")).kind, ErrorKind::case_file);
  const Refusal broken = refusal_of_load(folder.write("broken.toml", "[engine]\nbore = \"86 mm\nx = 1\n"));
  EXPECT_EQ(broken.kind, ErrorKind::case_file);
  EXPECT_TRUE(says(broken.text, "broken.toml:2:"));
  EXPECT_TRUE(says(broken.text, "bore = \"86 mm"));
  const Refusal twice = refusal_of_load(folder.write("twice.toml", "a = 1\na = 2\n"));
  EXPECT_EQ(twice.kind, ErrorKind::case_file);
  EXPECT_TRUE(says(twice.text, "twice.toml:2:"));
  EXPECT_EQ(refusal_of_load(folder.write("deep.toml", "a = " + std::string(100000, '['))).kind, ErrorKind::case_file);
}

TEST(CaseLoad, AbsurdNestingIsAFaultAndNoCrash) {
  const ScratchFolder folder;
  std::string dotted = "a";
  for (int i = 0; i < 400000; ++i) dotted += ".a";
  for (const std::string& text : {dotted + " = 1\n", "[" + dotted + "]\nb = 1\n", "[[" + dotted + "]]\n"})
    EXPECT_EQ(refusal_of_load(folder.write("deep.toml", text)).kind, ErrorKind::case_file);
}

// Any damage to a case ends in a case or in a fault, never in a crash or another kind of error.
TEST(CaseLoad, ARandomlyDamagedCaseIsReadOrRefused) {
  std::mt19937 random(1);
  const std::string whole = std::string(small_case) + "x = { a = [1, 2.5e3], b = 2020-01-01 }\nuse = [\"e.toml\"]\n";
  const std::string letters = "\"'[]{}=.,#\n\\0-9e+x\x01\xff ";
  for (int round = 0; round < 2000; ++round) {
    std::string text = whole;
    for (int change = 0; change < 4; ++change) {
      const std::size_t at = random() % text.size();
      if (random() % 2 == 0)
        text[at] = letters[random() % letters.size()];
      else
        text.erase(at, random() % 20);
    }
    const Refusal refusal = refusal_of([&] {
      CaseFile file = CaseFile::from_text(text, "damaged.toml");
      CaseFile again = CaseFile::from_text(file.text() + "\n", "again.toml");
      EXPECT_EQ(again.hash(), file.hash()) << text;
      file.root().tables("primary");
      file.finish();
    });
    EXPECT_TRUE(!refusal.kind || refusal.kind == ErrorKind::case_file) << refusal.text << text;
  }
}

TEST(CaseLoad, ACaseThatCannotBeReadIsAFaultOfTheFile) {
  const ScratchFolder folder;
  EXPECT_EQ(refusal_of_load(folder / "gone.toml").kind, ErrorKind::file);
  EXPECT_EQ(refusal_of_load(folder / "").kind, ErrorKind::file);
  EXPECT_EQ(refusal_of_load("/dev/zero").kind, ErrorKind::file);
  EXPECT_EQ(refusal_of_load(folder.write("huge.toml", std::string(2000000, '#'))).kind, ErrorKind::file);
}

std::string text_after(const std::string& assignment) {
  CaseFile file = CaseFile::from_text(small_case, "log.toml");
  file.set(assignment);
  return file.text();
}

TEST(CaseAddress, FindsTablesListsByNameCylinderAndTheOnlyOne) {
  EXPECT_TRUE(says(text_after("each_primary.tube=\"NPS 1-1/2 sch 10S\""), "tube = \"NPS 1-1/2 sch 10S\""));
  EXPECT_TRUE(says(text_after("joint.merge.throat = \"50 mm\""), "name = \"merge\"\nthroat = \"50 mm\""));
  EXPECT_TRUE(says(text_after("primary.1.length=\"200 mm\""), "cylinder = 1\nlength = \"200 mm\""));
  EXPECT_TRUE(says(text_after("wastegate.bore=\"38 mm\""), "bore = \"38 mm\""));
  EXPECT_TRUE(says(text_after("wastegate.1.bore=\"38 mm\""), "bore = \"38 mm\""));
  EXPECT_TRUE(says(text_after("run.rpm=[3000, 4500]"), "[run]\nrpm = [3000, 4500]"));
  EXPECT_TRUE(says(text_after("primary.4.angle=\"20 deg\""), "angle = \"20 deg\"\ncylinder = 4"));
}

TEST(CaseAddress, ALaterFaultShowsTheAssignment) {
  CaseFile file = CaseFile::from_text(small_case, "log.toml");
  file.set("joint.merge.throat=\"450 K\"");
  const std::vector<CaseTable> joints = file.root().tables("joint");
  joints[0].quantity("throat", Dimension::length);
  const std::string text = refusal_of([&] { file.finish(); }).text;
  EXPECT_TRUE(says(text, "--try:1:20: '450 K' is a temperature"));
  EXPECT_TRUE(says(text, "joint.merge.throat=\"450 K\"\n    |" + std::string(1 + 19, ' ') + "^"));
}

TEST(CaseAddress, RefusesWhatLeadsNowhere) {
  for (const char* assignment :
       {"", "throat", "=3", "joint.merge.throat=", "joint.merge.throat=50 mm", "joint.gone.throat=\"50 mm\"",
        "joint.throat=\"50 mm\"", "primary.2.length=\"1 m\"", "title.x=3", "joint=3", "each_primary=1", "a..b=1",
        "a=1\nb=2", "\"a=1", "primary.9999999999999999999999.x=1"}) {
    CaseFile file = CaseFile::from_text(small_case, "log.toml");
    EXPECT_EQ(refusal_of([&] { file.set(assignment); }).kind, ErrorKind::usage) << assignment;
  }
}

TEST(CaseAddress, AnUnknownKeyIsFoundByTheReader) {
  CaseFile file = CaseFile::from_text("a = 1\n", "d.toml");
  file.set("enigne.bore=\"86 mm\"");
  file.root().known("a");
  file.root().table("engine");
  EXPECT_TRUE(says(refusal_of([&] { file.finish(); }).text, "did you mean `engine`?"));
}

TEST(CaseText, IsTomlThatReadsBackToItself) {
  const CaseFile file = CaseFile::from_text(
      "title = \"a \\\"quoted\\\" \\\\ \\u0007 text\"\nx = 1e300\ny = 2.0\nz = [1, [2.5, \"s\"], {k = true}]\nd = "
      "2020-01-02\n"
      "[a.b]\nc = -3\n[[l]]\nm = {}\n[[l]]\n[l.n]\no = \"p\"\n\"odd key\" = 1\n",
      "d.toml");
  const CaseFile again = CaseFile::from_text(file.text(), "again.toml");
  EXPECT_EQ(again.text(), file.text());
  EXPECT_EQ(again.hash(), file.hash());
}

TEST(CaseText, TheHashDependsOnValuesAndNotOnTheOrderOfKeysOrOnComments) {
  const CaseFile one = CaseFile::from_text("a = 1\nb = \"x\"\n", "1");
  const CaseFile two = CaseFile::from_text("# why\nb = \"x\"\na = 1\n", "2");
  const CaseFile three = CaseFile::from_text("a = 1\nb = \"y\"\n", "3");
  EXPECT_EQ(one.hash(), two.hash());
  EXPECT_NE(one.hash(), three.hash());
  EXPECT_EQ(one.hash().size(), 16U);
}

}  // namespace
}  // namespace pulsewright

#include <H5Cpp.h>
#include <fmt/format.h>

#include <cstdint>

#include "shared/error.hpp"
#include "shared/results.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr hsize_t most_values = hsize_t{1} << 28;  // 2 GB of doubles: more is no result of ours

std::string without_padding(std::string text) {
  const std::size_t end = text.find('\0');
  if (end != std::string::npos) text.resize(end);
  return text;
}

ResultData values_of(const H5::DataSet& set) {
  const H5::DataSpace space = set.getSpace();
  const int rank = space.getSimpleExtentNdims();
  std::vector<hsize_t> size(static_cast<std::size_t>(rank > 0 ? rank : 1), 1);
  if (rank > 0) space.getSimpleExtentDims(size.data());
  hsize_t total = 1;
  for (const hsize_t n : size) {
    if (n > most_values || total * n > most_values) throw Error(ErrorKind::file, "this dataset is too large");
    total *= n;
  }
  ResultData result;
  result.shape.assign(size.begin(), size.end());
  result.values.resize(static_cast<std::size_t>(total));
  if (total > 0) set.read(result.values.data(), H5::PredType::NATIVE_DOUBLE);
  return result;
}

}  // namespace

struct ResultReader::Open {
  std::string name;
  H5::H5File file;

  [[noreturn]] void refuse(const std::string& what) const { throw Error(ErrorKind::file, what, printable(name)); }

  template <class Code>
  auto guarded(const std::string& what, Code code) const {
    try {
      return code();
    } catch (const H5::Exception&) {
      refuse(what + " cannot be read: it is missing, damaged or of another kind");
    }
  }

  bool exists(const std::string& path) const {
    for (std::size_t slash = path.find('/'); slash != std::string::npos; slash = path.find('/', slash + 1))
      if (!file.nameExists(path.substr(0, slash))) return false;
    return file.nameExists(path);
  }

  H5O_type_t kind(const std::string& path) const {
    if (path.empty()) return H5O_TYPE_GROUP;
    return exists(path) ? file.childObjType(path) : H5O_TYPE_UNKNOWN;
  }

  // Runs `code` with the attribute `attribute` of a group or dataset.
  template <class Code>
  auto with_attribute(const std::string& path, const std::string& attribute, Code code) const {
    if (kind(path) == H5O_TYPE_DATASET) return code(file.openDataSet(path).openAttribute(attribute));
    return code(file.openGroup(path.empty() ? "/" : path).openAttribute(attribute));
  }
};

ResultReader::ResultReader(const std::filesystem::path& path) : open_(std::make_unique<Open>()) {
  open_->name = path.string();
  std::error_code fault;
  const std::filesystem::file_status status = std::filesystem::status(path, fault);
  if (status.type() == std::filesystem::file_type::not_found) open_->refuse("this file does not exist");
  if (status.type() != std::filesystem::file_type::regular) open_->refuse("this is not a regular file");
  H5::Exception::dontPrint();
  try {
    open_->file = H5::H5File(open_->name, H5F_ACC_RDONLY);
  } catch (const H5::Exception&) {
    open_->refuse("this is not a result file (HDF5), or it is damaged");
  }
}

ResultReader::~ResultReader() = default;

bool ResultReader::has(const std::string& path) const {
  return open_->guarded(in_quotes(path), [&] { return open_->kind(path) != H5O_TYPE_UNKNOWN; });
}

bool ResultReader::is_group(const std::string& path) const {
  return open_->guarded(in_quotes(path), [&] { return open_->kind(path) == H5O_TYPE_GROUP; });
}

std::vector<std::string> ResultReader::list(const std::string& group) const {
  return open_->guarded(in_quotes(group), [&] {
    const H5::Group opened = open_->file.openGroup(group.empty() ? "/" : group);
    std::vector<std::string> names;
    for (hsize_t i = 0; i < opened.getNumObjs(); ++i) names.push_back(opened.getObjnameByIdx(i));
    return names;
  });
}

ResultData ResultReader::read(const std::string& path) const {
  ResultData result = open_->guarded(in_quotes(path), [&] { return values_of(open_->file.openDataSet(path)); });
  if (has_attribute(path, "units")) result.unit = attribute_text(path, "units");
  return result;
}

std::string ResultReader::text(const std::string& path) const {
  return open_->guarded(in_quotes(path), [&] {
    const H5::DataSet set = open_->file.openDataSet(path);
    if (set.getTypeClass() != H5T_STRING) open_->refuse(in_quotes(path) + " holds numbers, not text");
    std::string text;
    set.read(text, set.getStrType());
    return without_padding(text);
  });
}

bool ResultReader::has_attribute(const std::string& path, const std::string& name) const {
  return open_->guarded(in_quotes(path), [&] {
    if (open_->kind(path) == H5O_TYPE_DATASET) return open_->file.openDataSet(path).attrExists(name);
    return open_->file.openGroup(path.empty() ? "/" : path).attrExists(name);
  });
}

std::string ResultReader::attribute_text(const std::string& path, const std::string& name) const {
  return open_->guarded(fmt::format("attribute {} of {}", in_quotes(name), in_quotes(path)), [&] {
    return open_->with_attribute(path, name, [this, &name](const H5::Attribute& attribute) {
      if (attribute.getTypeClass() != H5T_STRING) open_->refuse(in_quotes(name) + " is a number, not text");
      std::string text;
      attribute.read(attribute.getStrType(), text);
      return without_padding(text);
    });
  });
}

double ResultReader::attribute_number(const std::string& path, const std::string& name) const {
  return open_->guarded(fmt::format("attribute {} of {}", in_quotes(name), in_quotes(path)), [&] {
    return open_->with_attribute(path, name, [](const H5::Attribute& attribute) {
      double number = 0;
      attribute.read(H5::PredType::NATIVE_DOUBLE, &number);
      return number;
    });
  });
}

}  // namespace pulsewright

#include <H5Cpp.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>
#include <utility>

#include "shared/error.hpp"
#include "shared/files.hpp"
#include "shared/results.hpp"
#include "shared/words.hpp"

namespace pulsewright {
namespace {

constexpr hsize_t chunk_values = 65536;  // half a megabyte of doubles
constexpr int deflate_level = 4;
constexpr std::size_t growth = std::size_t{1} << 20;  // by which the file grows in memory, bytes

H5::StrType text_type(std::size_t length) {
  H5::StrType type(H5::PredType::C_S1, std::max<std::size_t>(length, 1));
  type.setCset(H5T_CSET_UTF8);
  type.setStrpad(H5T_STR_NULLPAD);
  return type;
}

H5::LinkCreatPropList with_groups() {
  H5::LinkCreatPropList list;
  list.setCreateIntermediateGroup(true);
  return list;
}

// As many whole rows as fit.
std::vector<hsize_t> chunks(const std::vector<hsize_t>& shape) {
  std::vector<hsize_t> result(shape.size(), 1);
  hsize_t left = chunk_values;
  for (std::size_t i = shape.size(); i-- > 0;) {
    result[i] = std::clamp<hsize_t>(left, 1, shape[i]);
    left /= result[i];
  }
  return result;
}

void check(const std::string& path, std::span<const double> values, const std::vector<std::size_t>& shape) {
  const std::size_t wanted = std::accumulate(shape.begin(), shape.end(), std::size_t{1}, std::multiplies<>());
  if (shape.empty() || shape.size() > 2 || wanted != values.size())
    throw Error(ErrorKind::internal,
                fmt::format("{} values do not fit the shape of {}", values.size(), in_quotes(path)));
  const auto bad = std::find_if(values.begin(), values.end(), [](double v) { return !std::isfinite(v); });
  if (bad != values.end())
    throw Error(ErrorKind::internal, fmt::format("value {} of {} is {}", bad - values.begin(), in_quotes(path), *bad));
}

bool exists(const H5::H5Location& root, const std::string& path) {
  for (std::size_t slash = path.find('/'); slash != std::string::npos; slash = path.find('/', slash + 1))
    if (!root.nameExists(path.substr(0, slash))) return false;
  return root.nameExists(path);
}

std::string without_nul(std::string_view text) {
  std::string result(text);
  std::replace(result.begin(), result.end(), '\0', ' ');
  return result;
}

}  // namespace

std::string path_word(std::string_view name) {
  std::string result;
  for (const char c : name) {
    const bool spelt =
        c == '/' || c == '%' || c == '\0' || (c == '.' && name.find_first_not_of('.') == std::string::npos);
    result += spelt ? fmt::format("%{:02X}", static_cast<unsigned>(static_cast<unsigned char>(c))) : std::string(1, c);
  }
  return result.empty() ? "%" : result;
}

/// The file grows in memory and goes to disk whole: the library, which can crash where a disk is full, never writes there.
struct ResultWriter::Open {
  std::filesystem::path path;
  bool force;
  H5::H5File file;

  // Runs `code`, turning what HDF5 throws into our Error.
  template <class Code>
  void guarded(const std::string& what, Code code) {
    try {
      code();
    } catch (const H5::Exception& error) {
      throw Error(ErrorKind::file, fmt::format("{} cannot be written: {}", what, error.getDetailMsg()),
                  printable(path.string()));
    }
  }

  // An attribute goes to a group or a dataset; both can be opened as what they are.
  template <class Code>
  void with_object(const std::string& object, Code code) {
    if (object.empty()) {
      code(file.openGroup("/"));
      return;
    }
    if (!exists(file, object)) file.createGroup(object, with_groups());
    if (file.childObjType(object) == H5O_TYPE_DATASET)
      code(file.openDataSet(object));
    else
      code(file.openGroup(object));
  }

  void require_new(const std::string& name) const {
    if (exists(file, name)) throw Error(ErrorKind::internal, in_quotes(name) + " is written twice");
  }
};

ResultWriter::ResultWriter(const std::filesystem::path& path, bool force)
    : open_(std::make_unique<Open>(Open{path, force, {}})) {
  check_writable(path, force);
  H5::Exception::dontPrint();
  open_->guarded("this file", [&] {
    H5::FileAccPropList in_memory;
    in_memory.setCore(growth, false);
    open_->file = H5::H5File(path.string(), H5F_ACC_TRUNC, H5::FileCreatPropList::DEFAULT, in_memory);
  });
}

ResultWriter::~ResultWriter() = default;

void ResultWriter::write(const std::string& path, std::span<const double> values, std::vector<std::size_t> shape,
                         std::string_view unit) {
  check(path, values, shape);
  open_->guarded(in_quotes(path), [&] {
    open_->require_new(path);
    const std::vector<hsize_t> size(shape.begin(), shape.end());
    const H5::DataSpace space(static_cast<int>(size.size()), size.data());
    H5::DSetCreatPropList layout;
    if (!values.empty()) {
      const std::vector<hsize_t> chunk = chunks(size);
      layout.setChunk(static_cast<int>(chunk.size()), chunk.data());
      layout.setShuffle();
      layout.setDeflate(deflate_level);
      layout.setFletcher32();
    }
    const H5::DataSet set = open_->file.createDataSet(path, H5::PredType::IEEE_F64LE, space, layout,
                                                      H5::DSetAccPropList::DEFAULT, with_groups());
    if (!values.empty()) set.write(values.data(), H5::PredType::NATIVE_DOUBLE);
  });
  attribute(path, "units", unit);
}

void ResultWriter::write_text(const std::string& path, std::string_view text) {
  open_->guarded(in_quotes(path), [&] {
    open_->require_new(path);
    const H5::StrType type = text_type(text.size());
    const H5::DataSet set =
        open_->file.createDataSet(path, type, H5::DataSpace(H5S_SCALAR), H5::DSetCreatPropList::DEFAULT,
                                  H5::DSetAccPropList::DEFAULT, with_groups());
    set.write(without_nul(text), type);
  });
}

void ResultWriter::attribute(const std::string& path, const std::string& name, std::string_view text) {
  open_->guarded(in_quotes(path), [&] {
    open_->with_object(path, [&](const H5::H5Object& object) {
      const H5::StrType type = text_type(text.size());
      object.createAttribute(name, type, H5::DataSpace(H5S_SCALAR)).write(type, without_nul(text));
    });
  });
}

void ResultWriter::attribute(const std::string& path, const std::string& name, double number) {
  if (!std::isfinite(number))
    throw Error(ErrorKind::internal, fmt::format("attribute {} of {} is {}", name, in_quotes(path), number));
  open_->guarded(in_quotes(path), [&] {
    open_->with_object(path, [&](const H5::H5Object& object) {
      object.createAttribute(name, H5::PredType::IEEE_F64LE, H5::DataSpace(H5S_SCALAR))
          .write(H5::PredType::NATIVE_DOUBLE, &number);
    });
  });
}

void ResultWriter::commit() {
  std::string image;
  open_->guarded("this file", [&] {
    open_->file.flush(H5F_SCOPE_GLOBAL);
    const ssize_t size = H5Fget_file_image(open_->file.getId(), nullptr, 0);
    image.resize(static_cast<std::size_t>(std::max<ssize_t>(size, 0)));
    if (size <= 0 || H5Fget_file_image(open_->file.getId(), image.data(), image.size()) != size)
      throw H5::FileIException("commit", "no image of the file");
    open_->file.close();
  });
  pulsewright::write_text(open_->path, image, open_->force);
}

}  // namespace pulsewright

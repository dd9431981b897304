#include "file.hpp"

#include <array>
#include <fstream>

#include "refused.hpp"

#ifdef BIDE_NETCDF
#include <netcdf.h>
#endif

namespace bide::tool::cf {
namespace {

std::string first_bytes(const std::filesystem::path& path) {
  std::ifstream in(path, std::ios::binary);
  std::array<char, 4> begin{};
  in.read(begin.data(), begin.size());
  return {begin.data(), static_cast<std::size_t>(in.gcount())};
}

bool begins_with(std::string_view text, std::string_view begin) {
  return text.substr(0, begin.size()) == begin;
}

// What stands in the place of a NetCDF file often enough to be named. That the system knows the file also
// keeps the library from taking its name for an address on the network.
void expect_a_file(const std::filesystem::path& path) {
  std::error_code error;
  if (!std::filesystem::exists(path, error)) refuse("found no such file");
  if (!std::filesystem::is_regular_file(path, error)) refuse("is no file that can be read");
  const std::string found = first_bytes(path);
  if (begins_with(found, "PK")) refuse("found a zip archive; allowed a NetCDF file: unpack it first");
  if (found == "GRIB") refuse("found a GRIB file; allowed a NetCDF file: ask for NetCDF, or convert it");
}

}  // namespace

bool is_for_netcdf(const std::filesystem::path& path) {
  std::string end = path.extension().string();
  for (char& letter : end)
    if (letter >= 'A' && letter <= 'Z') letter = static_cast<char>(letter - 'A' + 'a');
  if (end == ".nc" || end == ".nc4" || end == ".cdf" || end == ".netcdf") return true;
  std::error_code error;
  if (!std::filesystem::is_regular_file(path, error)) return false;
  const std::string found = first_bytes(path);
  return begins_with(found, "CDF") || begins_with(found, "\x89HDF") || begins_with(found, "PK") ||
         found == "GRIB";
}

std::string shape(const Head& variable) {
  std::string out = variable.name + "(";
  for (std::size_t i = 0; i < variable.dimensions.size(); ++i)
    out += (i == 0 ? "" : ", ") + variable.dimensions[i].name;
  return out + ")";
}

const Head* File::find(std::string_view name) const {
  for (const Head& each : variables_)
    if (each.name == name) return &each;
  return nullptr;
}

std::vector<double> File::read_all(const Head& variable) const {
  std::vector<std::size_t> start, count;
  for (const Dimension& each : variable.dimensions) {
    start.push_back(0);
    count.push_back(each.length);
  }
  return read(variable, start, count);
}

#ifndef BIDE_NETCDF

File::File(const std::filesystem::path& path) {
  expect_a_file(path);
  refuse("this program was built without NetCDF (libnetcdf-dev)");
}
File::~File() = default;
std::optional<std::string> File::text(const Head*, const char*) const {
  return {};
}
std::vector<double> File::numbers(const Head&, const char*) const {
  return {};
}
bool File::is_real(const Head&, const char*) const {
  return false;
}
std::vector<double> File::read(const Head&, const std::vector<std::size_t>&,
                               const std::vector<std::size_t>&) const {
  return {};
}
std::vector<std::string> File::read_words(const Head&) const {
  return {};
}

#else

namespace {

constexpr std::size_t most_attribute_bytes = 1 << 20, most_values = std::size_t{1} << 26;

// What a caller asks for by name, which need not be there.
bool there(int status) {
  return status == NC_NOERR;
}

void must(int status, const std::string& what) {
  if (status != NC_NOERR) refuse("{}: cannot be read: {}", what, nc_strerror(status));
}

Head::Type type_of(nc_type type) {
  if (type == NC_DOUBLE) return Head::Type::real;
  if (type == NC_FLOAT) return Head::Type::single;
  if (type == NC_CHAR || type > NC_UINT64) return Head::Type::text;
  return Head::Type::whole;
}

// Values of one byte have no fill of their own: each may be meant (NetCDF user's guide, "Fill Values").
std::optional<double> default_fill(nc_type type) {
  switch (type) {
    case NC_SHORT:
      return NC_FILL_SHORT;
    case NC_INT:
      return NC_FILL_INT;
    case NC_INT64:
      return static_cast<double>(NC_FILL_INT64);
    case NC_USHORT:
      return NC_FILL_USHORT;
    case NC_UINT:
      return NC_FILL_UINT;
    case NC_FLOAT:
      return NC_FILL_FLOAT;
    case NC_DOUBLE:
      return NC_FILL_DOUBLE;
    default:
      return std::nullopt;
  }
}

Dimension dimension(int file, int id, const std::string& of) {
  std::array<char, NC_MAX_NAME + 1> name{};
  std::size_t length = 0;
  must(nc_inq_dim(file, id, name.data(), &length), of);
  return {id, name.data(), length};
}

Head head(int file, int id) {
  std::array<char, NC_MAX_NAME + 1> name{};
  nc_type type = 0;
  int rank = 0;
  std::array<int, NC_MAX_VAR_DIMS> ids{};
  const std::string unnamed = "variable " + std::to_string(id + 1);
  must(nc_inq_varndims(file, id, &rank), unnamed);
  if (rank < 0 || rank > NC_MAX_VAR_DIMS) refuse("{}: found {} dimensions", unnamed, rank);
  must(nc_inq_var(file, id, name.data(), &type, &rank, ids.data(), nullptr), unnamed);
  Head out{id, name.data(), type_of(type), {}, default_fill(type)};
  for (int i = 0; i < rank; ++i)
    out.dimensions.push_back(dimension(file, ids[static_cast<std::size_t>(i)], out.name));
  return out;
}

}  // namespace

File::File(const std::filesystem::path& path) {
  expect_a_file(path);
  if (const int status = nc_open(path.c_str(), NC_NOWRITE, &id_); status != NC_NOERR)
    refuse("is no NetCDF file that can be read: {}", nc_strerror(status));
  try {
    int count = 0;
    must(nc_inq_nvars(id_, &count), "variables");
    std::vector<int> ids(static_cast<std::size_t>(count));
    must(nc_inq_varids(id_, &count, ids.data()), "variables");
    for (const int id : ids) variables_.push_back(head(id_, id));
  } catch (...) {
    nc_close(id_);
    throw;
  }
}

File::~File() {
  nc_close(id_);
}

std::optional<std::string> File::text(const Head* variable, const char* attribute) const {
  const int of = variable != nullptr ? variable->id : NC_GLOBAL;
  nc_type type = 0;
  std::size_t length = 0;
  if (!there(nc_inq_att(id_, of, attribute, &type, &length))) return {};
  if (type == NC_CHAR && length <= most_attribute_bytes) {
    std::string out(length, '\0');
    if (!there(nc_get_att_text(id_, of, attribute, out.data()))) return {};
    out.resize(std::min(out.find('\0'), out.size()));
    return out;
  }
  if (type != NC_STRING || length != 1) return {};
  char* word = nullptr;
  if (!there(nc_get_att_string(id_, of, attribute, &word))) return {};
  std::string out = word != nullptr ? word : "";
  nc_free_string(1, &word);
  return out;
}

std::vector<double> File::numbers(const Head& variable, const char* attribute) const {
  nc_type type = 0;
  std::size_t length = 0;
  if (!there(nc_inq_att(id_, variable.id, attribute, &type, &length))) return {};
  if (type_of(type) == Head::Type::text || length > most_attribute_bytes) return {};
  std::vector<double> out(length);
  if (length > 0)
    must(nc_get_att_double(id_, variable.id, attribute, out.data()), variable.name + ":" + attribute);
  return out;
}

bool File::is_real(const Head& variable, const char* attribute) const {
  nc_type type = 0;
  if (!there(nc_inq_atttype(id_, variable.id, attribute, &type))) return false;
  return type_of(type) == Head::Type::real || type_of(type) == Head::Type::single;
}

std::vector<double> File::read(const Head& variable, const std::vector<std::size_t>& start,
                               const std::vector<std::size_t>& count) const {
  if (variable.type == Head::Type::text) refuse("{}: found text; allowed numbers", variable.name);
  std::size_t all = 1;
  for (const std::size_t each : count) {
    if (each != 0 && all > most_values / each)
      refuse("{}: found more than {} values", variable.name, most_values);
    all *= each;
  }
  std::vector<double> out(all);
  if (all > 0)
    must(nc_get_vara_double(id_, variable.id, start.data(), count.data(), out.data()), variable.name);
  return out;
}

std::vector<std::string> File::read_words(const Head& variable) const {
  nc_type type = 0;
  if (!there(nc_inq_vartype(id_, variable.id, &type)) || variable.dimensions.empty()) return {};
  const std::size_t rows = variable.dimensions.front().length;
  std::vector<std::string> out;
  if (rows > most_values) return out;
  if (type == NC_STRING && variable.dimensions.size() == 1) {
    std::vector<char*> words(rows, nullptr);
    if (rows == 0) return out;
    must(nc_get_var_string(id_, variable.id, words.data()), variable.name);
    for (const char* word : words) out.emplace_back(word != nullptr ? word : "");
    nc_free_string(rows, words.data());
  } else if (type == NC_CHAR && variable.dimensions.size() == 2) {
    const std::size_t letters = variable.dimensions[1].length;
    if (letters == 0 || rows > most_values / letters) return out;
    std::string text(rows * letters, '\0');
    must(nc_get_var_text(id_, variable.id, text.data()), variable.name);
    for (std::size_t i = 0; i < rows; ++i) {
      const std::string word = text.substr(i * letters, letters);
      out.push_back(word.substr(0, word.find('\0')));
    }
  }
  return out;
}

#endif

}  // namespace bide::tool::cf

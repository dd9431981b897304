// A NetCDF file for reading: its dimensions, variables, attributes and numbers.
//
// The one place of the reader that knows the NetCDF library. Everything throws Refused; a program built
// without the library refuses to open.
#pragma once

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bide::tool::cf {

struct Dimension {
  int id = 0;
  std::string name;
  std::size_t length = 0;

  bool operator==(const Dimension&) const = default;
};

// A variable as the file declares it.
struct Head {
  enum class Type { whole, real, single, text };  // integers; double; float; letters or words
  int id = 0;
  std::string name;
  Type type = Type::real;
  std::vector<Dimension> dimensions;
  std::optional<double> default_fill;  // what the library writes where nothing was written
};

// Whether a file is to be read by this reader: by its name (.nc, .nc4, .cdf, .netcdf) or by how it begins.
// Archives and GRIB count, so that the reader can say what they are.
bool is_for_netcdf(const std::filesystem::path& path);

class File {
 public:
  explicit File(const std::filesystem::path& path);
  ~File();
  File(const File&) = delete;
  File& operator=(const File&) = delete;

  // Those of the root group.
  const std::vector<Head>& variables() const { return variables_; }
  const Head* find(std::string_view name) const;

  // An attribute of a variable, or of the file for nullptr; nothing when it is not there or of another kind.
  std::optional<std::string> text(const Head* variable, const char* attribute) const;
  std::vector<double> numbers(const Head& variable, const char* attribute) const;
  // Whether an attribute of numbers holds reals.
  bool is_real(const Head& variable, const char* attribute) const;

  // Numbers of a block, the last dimension fastest.
  // @param start, count along each dimension of the variable
  std::vector<double> read(const Head& variable, const std::vector<std::size_t>& start,
                           const std::vector<std::size_t>& count) const;
  std::vector<double> read_all(const Head& variable) const;
  // Words of a variable along one dimension; empty when it holds none.
  std::vector<std::string> read_words(const Head& variable) const;

 private:
  int id_ = 0;
  std::vector<Head> variables_;
};

// "temperature(time, latitude, longitude)".
std::string shape(const Head& variable);

}  // namespace bide::tool::cf

#include "reader.hpp"

#include <cmath>
#include <map>
#include <memory>
#include <optional>

#include "refused.hpp"

namespace bide::tool::cf {
namespace {

namespace fs = std::filesystem;

struct Source {
  fs::path path;
  std::unique_ptr<File> file;
  std::vector<Variable> variables;
};

// Runs work on a file; what it throws gets the file's name.
template <class Work>
auto naming(const fs::path& path, const Work& work) {
  try {
    return work();
  } catch (const Refused& wrong) {
    throw Refused(path.string() + ": " + wrong.what());
  } catch (const std::bad_alloc&) {
    throw Refused(path.string() + ": found sizes beyond this machine's memory");
  }
}

std::string self_description(const Source& source) {
  constexpr std::size_t most_letters = 200;
  std::string out = source.path.filename().string();
  for (const char* attribute : {"title", "institution", "source", "license", "Conventions"})
    if (const auto text = source.file->text(nullptr, attribute); text && !text->empty())
      out += fmt::format(", {}: {}", attribute, text->substr(0, most_letters));
  return out;
}

bool is_of_the_sea(Field field) {
  return field == Field::sea_temperature || field == Field::wave_height || field == Field::wave_period ||
         field == Field::wave_period_energy;
}

class Reader {
 public:
  Reader(const Request& request, const std::function<void(std::size_t)>& watch)
      : request_(request), watch_(watch) {}

  Reading read(const std::vector<fs::path>& paths) {
    for (const fs::path& path : paths) {
      watch_(sources_.size());
      sources_.push_back(naming(path, [&] {
        Source source{path, std::make_unique<File>(path), {}};
        source.variables = variables(*source.file);
        return source;
      }));
      out_.files.push_back(self_description(sources_.back()));
    }
    find_sea();
    each_variable([&](const Variable& variable) { read_variable(variable); });
    return std::move(out_);
  }

 private:
  template <class Work>
  void each_variable(const Work& work) {
    for (at_ = 0; at_ < sources_.size(); ++at_)
      for (const Variable& variable : sources_[at_].variables)
        naming(sources_[at_].path, [&] { work(variable); });
  }

  const File& file() const { return *sources_[at_].file; }
  Progress progress() const {
    return [this] { watch_(at_); };
  }

  Times times(const Variable& variable) const { return times_for(variable.unix_s, request_.span); }

  std::optional<Cell> sea_cell(const Variable& variable) {
    return nearest_with_value(file(), variable, request_.place, request_.reach_km, times(variable),
                              progress());
  }

  void find_sea() {
    each_variable([&](const Variable& variable) {
      if (variable.field != Field::sea_temperature || sea_ || times(variable).count == 0) return;
      sea_ = sea_cell(variable);
      if (!sea_) refuse_land(variable);
      chosen_[variable.field] = sea_->centre;
    });
    if (!sea_) out_.notes.emplace_back("no sea temperature in the files: nothing tells land from sea");
  }

  // Why a variable of the sea has no cell within reach.
  [[noreturn]] void refuse_land(const Variable& variable) const {
    const double nearest_km = nearest_from(variable, request_.place);
    if (nearest_km > request_.reach_km) refuse_far(variable, nearest_km, "the place");
    refuse(
        "{}: found no cell of the sea with a value within {} km of the place, the nearest cell is {:.0f} km "
        "off; "
        "allowed a place at sea, or a longer --reach",
        variable.head.name, request_.reach_km, nearest_km);
  }

  [[noreturn]] void refuse_far(const Variable& variable, double nearest_km, const char* from) const {
    refuse("{}: found the nearest cell {:.0f} km from {}; allowed {} km (--reach)", variable.head.name,
           nearest_km, from, request_.reach_km);
  }

  static double nearest_from(const Variable& variable, const Place& from) {
    constexpr double half_round_km = 20100;
    return cells_near(variable, from, half_round_km).front().distance_km;
  }

  // The cell nearest to a place of the sea that was found before.
  Cell cell_at(const Variable& variable, const Place& from, const char* words) const {
    std::vector<Cell> near = cells_near(variable, from, request_.reach_km);
    if (near.empty()) refuse_far(variable, nearest_from(variable, from), words);
    near.front().distance_km = distance_km(near.front().centre, request_.place);
    return near.front();
  }

  Cell cell(const Variable& variable) {
    const bool of_the_sea = is_of_the_sea(variable.field);
    // One cell for a variable of the sea in all files: what is ice in one month need not be in the next.
    if (const auto chosen = chosen_.find(variable.field); chosen != chosen_.end())
      return cell_at(variable, chosen->second, "its cell in the file before");
    if (!of_the_sea && sea_) return cell_at(variable, sea_->centre, "the cell of the sea temperature");
    if (!of_the_sea) return cell_at(variable, request_.place, "the place");
    const std::optional<Cell> found = sea_cell(variable);
    if (!found) refuse_land(variable);
    chosen_[variable.field] = found->centre;
    return *found;
  }

  void read_variable(const Variable& variable) {
    Times when = times(variable);
    Series series;
    if (when.count > 0) {
      if (variable.field == Field::rain_amount && request_.running_rain && when.first > 0)
        --when.first, ++when.count;
      series = read_series(file(), variable, cell(variable), when, progress());
    } else {
      series.field = variable.field;
      series.variable = variable.head.name;
      series.units = variable.units;
      series.held = {variable.unix_s.front(), variable.unix_s.back()};
    }
    series.file = sources_[at_].path.filename().string();
    out_.series.push_back(std::move(series));
  }

  const Request& request_;
  const std::function<void(std::size_t)>& watch_;
  std::vector<Source> sources_;
  std::size_t at_ = 0;
  std::optional<Cell> sea_;
  std::map<Field, Place> chosen_;  // of the variables of the sea
  Reading out_;
};

}  // namespace

Reading read(const std::vector<fs::path>& paths, const Request& request,
             const std::function<void(std::size_t)>& watch) {
  return Reader(request, watch).read(paths);
}

}  // namespace bide::tool::cf

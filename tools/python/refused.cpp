#include "refused.hpp"

namespace bide::python {
namespace py = pybind11;
namespace {

py::object& refused_class() {
  static auto* the_class = new py::object;  // never freed: modules are not unloaded
  return *the_class;
}

}  // namespace

py::str text(std::string_view bytes) {
  return py::reinterpret_steal<py::str>(
      PyUnicode_DecodeUTF8(bytes.data(), static_cast<py::ssize_t>(bytes.size()), "replace"));
}

py::list reasons(const scenario::Diagnostics& diagnostics) {
  py::list out;
  for (const scenario::Diagnostic& each : diagnostics) {
    py::dict reason;
    reason["file"] = text(each.file);
    reason["pointer"] = text(each.pointer);
    reason["message"] = text(each.message);
    out.append(std::move(reason));
  }
  return out;
}

void add_refused(py::module_& module) {
  refused_class() = py::reinterpret_steal<py::object>(PyErr_NewExceptionWithDoc(
      "bide.Refused",
      "An input was refused. The text has a line for each reason, with its JSON pointer; `reasons` is a list "
      "of dict with the keys file, pointer and message.",
      PyExc_ValueError, nullptr));
  module.attr("Refused") = refused_class();
}

void refuse(const study::Refusal& refusal) {
  std::string lines;
  for (const scenario::Diagnostic& each : refusal.reasons)
    lines += (lines.empty() ? "" : "\n") + to_string(each);
  switch (refusal.why) {
    case study::Refusal::Why::run:
      PyErr_SetObject(PyExc_RuntimeError, text(lines).ptr());
      throw py::error_already_set();
    case study::Refusal::Why::output:
      PyErr_SetObject(PyExc_OSError, text(lines).ptr());
      throw py::error_already_set();
    case study::Refusal::Why::input:
      break;
  }
  const py::object error = refused_class()(text(lines));
  error.attr("reasons") = reasons(refusal.reasons);
  PyErr_SetObject(refused_class().ptr(), error.ptr());
  throw py::error_already_set();
}

}  // namespace bide::python

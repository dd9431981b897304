// From the compiled engine to a function that answers questions. Used in workers and, for tests, in node.

// @param module what the compiled engine's factory gave
// @return takes a question, returns its answer; both plain objects
export function door_of(module) {
  return (question) => {
    for (const [path, text] of Object.entries(question.files ?? {})) {
      const whole = path.startsWith("/") ? path : `/${path}`;
      module.FS.mkdirTree(whole.slice(0, whole.lastIndexOf("/")) || "/");
      module.FS.writeFile(whole, text);
    }
    const text = JSON.stringify({...question, files: undefined});
    const bytes = module.lengthBytesUTF8(text) + 1;
    const place = module._malloc(bytes);
    module.stringToUTF8(text, place, bytes);
    const answer = module.UTF8ToString(module._bide_ask(place));
    module._free(place);
    return JSON.parse(answer);
  };
}

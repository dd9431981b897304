// A worker: the engine in a thread of its own. The factory bide_engine stands before this script.
import {door_of} from "./door.js";

let door = null;

const instance = (compiled) => bide_engine({
  instantiateWasm: (imports, use) => {
    WebAssembly.instantiate(compiled, imports).then((made) => {
      const memory = Object.values(made.exports).find((each) => each instanceof WebAssembly.Memory);
      globalThis.memory_bytes = () => memory.buffer.byteLength;  // for whoever measures
      use(made, compiled);
    });
    return {};
  }
});

onmessage = async ({data}) => {
  try {
    if (data.compiled) {
      door = instance(data.compiled).then(door_of);
      return;
    }
    postMessage({answer: (await door)(data.question)});
  } catch (fault) {
    postMessage({fault: String(fault?.message ?? fault)});
  }
};

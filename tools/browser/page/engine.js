// Workers that answer questions. A worker whose question is no longer wanted is ended and another takes its place,
// so that an old question never holds up a new one.

const inflate = async (base64) => {
  const bytes = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
  const stream = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Response(stream).arrayBuffer();
};

// Thrown for a question that was given up.
export class GivenUp extends Error {}

class Lane {
  constructor(compiled, script) {
    this.compiled = compiled;
    this.script = script;
    this.start();
  }

  start() {
    this.worker = new Worker(this.script);
    this.jobs = [];
    this.worker.onmessage = ({data}) => {
      const job = this.jobs.shift();
      if (data.fault !== undefined) this.broke(job, data.fault);
      else job.done(data.answer);
    };
    this.worker.onerror = (event) => {
      event.preventDefault();
      this.broke(this.jobs.shift(), event.message);
    };
    this.worker.postMessage({compiled: this.compiled});
  }

  // A fault may have left the engine's memory in any state: start afresh and ask what still waits again. What broke it
  // is asked once more too: a worker can be ended by a browser that is short of memory.
  broke(job, what) {
    const waiting = this.jobs;
    this.worker.terminate();
    this.start();
    if (job && !job.again) this.send({...job, again: true});
    else job?.failed(new Error(`The engine broke off twice (${what}).`));
    waiting.forEach((each) => this.send(each));
  }

  send(job) {
    this.jobs.push(job);
    this.worker.postMessage({question: job.question});
  }

  ask(question) {
    return new Promise((done, failed) => {
      this.send({question, done, failed});
    });
  }

  // Gives up all that was asked.
  give_up() {
    if (this.jobs.length === 0) return;
    const old = this.jobs;
    this.worker.terminate();
    this.start();
    old.forEach((job) => job.failed(new GivenUp("given up")));
  }

  get busy() { return this.jobs.length > 0; }
}

// @param packed the compiled engine, gzipped, in base 64
// @param script text of the worker
// @return makes lanes
export async function start_engine(packed, script) {
  const compiled = await WebAssembly.compile(await inflate(packed));
  const url = URL.createObjectURL(new Blob([script], {type: "text/javascript"}));
  return {lane: () => new Lane(compiled, url)};
}

/* The workers. One answers; when the box of paints changes, another makes the
 * new one ready, and until then the old one goes on answering with the old box. */
function open_worker(module) {
  const address = URL.createObjectURL(new Blob([WORKER], { type: 'text/javascript' }));
  const worker = new Worker(address);
  const waiting = new Map();
  let last = 0;
  worker.onmessage = ({ data }) => {
    const entry = waiting.get(data.id);
    if (!entry) return;
    if (data.share !== undefined) {
      if (entry.progress) entry.progress(data.share);
      return;
    }
    waiting.delete(data.id);
    if (data.refused || data.failed) entry.fail(data.refused || { what: data.failed, line: 0 });
    else entry.done(data);
  };
  worker.onerror = (event) => {
    for (const entry of waiting.values()) entry.fail({ what: event.message || 'the library stopped', line: 0 });
    waiting.clear();
  };
  const desk = {
    box: null,
    ask(call, what, progress) {
      return new Promise((done, fail) => {
        const id = ++last;
        waiting.set(id, { done, fail, progress });
        worker.postMessage({ ...what, call, id });
      });
    },
    /* What is still waited for fails with `closed`, to be asked elsewhere. */
    close() {
      for (const entry of waiting.values()) entry.fail({ closed: true, what: 'another box answers now', line: 0 });
      waiting.clear();
      worker.terminate();
      URL.revokeObjectURL(address);
    },
  };
  desk.started = desk.ask('start', { module });
  return desk;
}

async function inflate(base64) {
  const packed = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream('deflate'));
  return new Response(stream).arrayBuffer();
}

const bench = {
  module: null, ready: null, mixing: null, side: null,

  async open() {
    bench.module = await WebAssembly.compile(await inflate(CORE));
    bench.ready = open_worker(bench.module);
    await bench.ready.started;
  },

  /* For what takes its time beside the planning. */
  aside() {
    if (!bench.side) bench.side = open_worker(bench.module);
    return bench.side;
  },

  /* Makes another box ready; calls done when it answers. */
  change_box(box, text, progress, done, fail) {
    if (bench.mixing && bench.mixing.box === box) return;
    if (bench.mixing) bench.mixing.close();
    const desk = open_worker(bench.module);
    desk.box = box;
    bench.mixing = desk;
    desk.ask('mix', { scene: text }, progress).then(() => {
      if (bench.mixing !== desk) return;
      bench.ready.close();
      bench.ready = desk;
      bench.mixing = null;
      done();
    }, (problem) => {
      if (bench.mixing !== desk) return;
      desk.close();
      bench.mixing = null;
      fail(problem);
    });
  },

  keep_box() {
    if (bench.mixing) bench.mixing.close();
    bench.mixing = null;
  },
};

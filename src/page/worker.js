/* Runs the library. Each message asks for one thing and is answered once. */
'use strict';

let core, page;
const encoder = new TextEncoder(), decoder = new TextDecoder();

function give(text) {
  const bytes = typeof text === 'string' ? encoder.encode(text) : text;
  const at = core.page_room(page, bytes.length + 1);
  if (!at) throw new Error('not enough memory');
  new Uint8Array(core.memory.buffer, at, bytes.length).set(bytes);
  return bytes.length;
}

function reply() {
  const at = core.page_reply(page), size = core.page_reply_size(page);
  return decoder.decode(new Uint8Array(core.memory.buffer, at, size));
}

/* What the library refuses comes back as it words it. */
class Refused extends Error {}

function done(code) {
  if (!code) throw new Refused(reply());
}

/* Files that what is asked about may name: those and no others. */
function take_files(files) {
  core.page_files_free(page);
  for (const file of files || []) {
    const name = encoder.encode(file.name), both = new Uint8Array(name.length + file.bytes.length);
    both.set(name);
    both.set(file.bytes, name.length);
    give(both);
    core.page_file(page, name.length, file.bytes.length); /* where it is refused, it is not there */
  }
}

function read(ask) {
  done(core.page_read(page, give(ask.scene)));
}

function still(ask, greys) {
  const at = core.page_picture(page, ask.width, ask.height, greys ? 1 : 0, ask.moving ? 1 : 0);
  if (!at) throw new Error('the picture could not be painted');
  return core.memory.buffer.slice(at, at + ask.width * ask.height * 4);
}

function skylines(ask, planes) {
  const at = core.page_skylines(page, ask.width, ask.height, ask.moving ? 1 : 0);
  return at ? core.memory.buffer.slice(at, at + 4 * ask.width * planes) : null;
}

const calls = {
  start(ask) {
    const instance = new WebAssembly.Instance(ask.module, {
      page: { report(share) { postMessage({ id: ask.id, share }); } },
    });
    core = instance.exports;
    page = core.page_new();
    return {};
  },
  lists() {
    done(core.page_lists(page));
    return { text: reply() };
  },
  /* Makes a box of paints ready for what follows. */
  mix(ask) {
    read(ask);
    done(core.page_mix(page));
    return {};
  },
  plan(ask) {
    const began = performance.now();
    read(ask);
    done(core.page_mix(page));
    done(core.page_plan(page));
    done(core.page_view(page));
    const view = reply(), planned = performance.now();
    const pixels = still(ask, ask.greys), painted = performance.now();
    const lines = ask.lines ? skylines(ask, ask.planes) : null;
    let filled = null;
    if (ask.filled) {
      if (ask.whole) done(core.page_read(page, give(ask.whole)));
      done(core.page_scene(page));
      filled = reply();
      if (ask.whole) read(ask);
    }
    const now = performance.now();
    return {
      view, pixels, lines, filled, width: ask.width, height: ask.height,
      times: { plan: planned - began, paint: painted - planned, library: now - began },
    };
  },
  /* A picture to keep: in colour and in greys. */
  keep(ask) {
    read(ask);
    done(core.page_mix(page));
    done(core.page_plan(page));
    return { pixels: still(ask, 0), greys: still(ask, 1), width: ask.width, height: ask.height };
  },
  /* What a file is: a scene, a palette, a pigment. */
  kind(ask) {
    take_files(ask.files);
    done(core.page_kind(page, give(ask.bytes)));
    return { text: reply() };
  },
  /* The paints of a scene, with their colours. */
  box(ask) {
    read(ask);
    done(core.page_box(page));
    return { text: reply() };
  },
  /* Checks a scene and gives it back filled in. */
  check(ask) {
    take_files(ask.files);
    read(ask);
    done(core.page_scene(page));
    return { text: reply() };
  },
  whole(ask) {
    read(ask);
    done(core.page_mix(page));
    done(core.page_plan(page));
    done(core.page_advise(page));
    done(core.page_plan_json(page));
    return { text: reply() };
  },
  /* The warnings once more, with what would help. */
  advice(ask) {
    read(ask);
    done(core.page_mix(page));
    done(core.page_plan(page));
    done(core.page_advise(page));
    done(core.page_view(page));
    return { text: reply() };
  },
  match(ask) {
    done(core.page_match(page, ask.plane, ask.shadow ? 1 : 0, ask.base ? 1 : 0));
    return { text: reply() };
  },
  /* For a plane's own colour, as it is close to. */
  match_own(ask) {
    done(core.page_match_own(page, ask.plane));
    return { text: reply() };
  },
  ladder(ask) {
    read(ask);
    done(core.page_ladder(page, ask.plane));
    return { text: reply() };
  },
  chart(ask) {
    read(ask);
    done(core.page_chart(page, ask.third));
    return { text: reply() };
  },
  work(ask) {
    read(ask);
    done(core.page_mix(page));
    done(core.page_plan(page));
    done(core.page_work(page, ask.wells));
    return { text: reply() };
  },
};

onmessage = (event) => {
  const ask = event.data;
  try {
    const answer = calls[ask.call](ask);
    answer.id = ask.id;
    postMessage(answer, [answer.pixels, answer.greys, answer.lines].filter(Boolean));
  } catch (error) {
    const refused = error instanceof Refused ? JSON.parse(error.message) : null;
    postMessage({ id: ask.id, refused, failed: refused ? null : String(error.message || error) });
  }
};

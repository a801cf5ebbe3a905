/* How long the page takes from an input event to the drawing finished, in the
 * built-in scene with its twelve pigments; no test, for times depend on the
 * machine. Each event waits for the last drawing, as events of a hand do that
 * come once a frame.
 *
 *     BUILD=build PAGE=build/wasm/planner.html FETCHED=build/fetched node tests/page/speed.mjs */
import { open_page, at_rest } from './browser.mjs';

const { page, close } = await open_page({ viewport: { width: 1440, height: 900 } });

/* Moves a slider in steps as a hand does: an input event once a frame. */
function slide(id, from, to, steps) {
  return page.evaluate(async ([slider, least, most, count]) => {
    const control = document.getElementById(slider), first = window.drawn.length;
    for (let i = 0; i < count; i++) {
      const drawn = window.drawn.length;
      control.value = String(least + (most - least) * i / (count - 1));
      control.dispatchEvent(new Event('input', { bubbles: true }));
      while (window.drawn.length === drawn) await new Promise(requestAnimationFrame);
    }
    const times = window.drawn.slice(first);
    control.dispatchEvent(new Event('change', { bubbles: true }));
    return times;
  }, [id, from, to, steps]);
}

function told(name, times) {
  const share = (of, part) => of.slice().sort((a, b) => a - b)[Math.min(of.length - 1, Math.floor(of.length * part))];
  const all = times.map((t) => t.milliseconds), library = times.map((t) => t.library);
  const plan = times.map((t) => t.plan), paint = times.map((t) => t.paint);
  console.log(`${name.padEnd(28)} least ${share(all, 0).toFixed(1)} ms, median ${share(all, 0.5).toFixed(1)} ms, 95th percentile ${share(all, 0.95).toFixed(1)} ms; ` +
    `of the median in the library ${share(library, 0.5).toFixed(1)} (plan ${share(plan, 0.5).toFixed(1)}, picture ${share(paint, 0.5).toFixed(1)}); ` +
    `${times.length} events`);
}

const runs = [['visibility', 'thickening air', 2, 0.3], ['sun-height', 'lowering the sun', 60, 8],
  ['sun-side', 'turning the sun', 20, 170], ['plane-far', 'moving the far ridge', 4.3, 3.8]];
const all = [];
for (let round = 0; round < 2; round++)
  for (const [id, name, from, to] of runs) {
    const times = await slide(id, from, to, 100);
    await at_rest(page);
    if (round) {
      told(name, times);
      all.push(...times);
    }
  }
told('all together', all);
console.log(`picture while moving: ${await page.evaluate(() => `${document.getElementById('picture').clientWidth} px wide shown`)}`);
await close();

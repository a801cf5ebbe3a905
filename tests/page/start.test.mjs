/* A first visit: what stands there, and what does not leave the page. */
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import test from 'node:test';
import { open_page, pixels, key_of, PAGE } from './browser.mjs';

test('a first visitor sees a planned scene and a line that says what to try', async () => {
  const { page, said, asked, close } = await open_page();
  try {
    assert.equal(await page.isVisible('#try'), true);
    assert.equal(await page.isVisible('#problem'), false);
    const key = await key_of(page), picture = await pixels(page);
    assert.equal(key.length, 7);
    assert.ok(picture.coloured > 0.5 * picture.width * picture.height, 'the picture is in colour');
    for (const { washes } of key) {
      assert.ok(washes.length >= 1);
      for (const wash of washes) assert.match(wash.mix, /alone|parts? |bare paper/);
    }
    assert.deepEqual(said, [], 'nothing on the console');
    assert.deepEqual(asked.filter((url) => !url.startsWith('file:')), [], 'no request');
    assert.equal(asked.length, 1, `only the page itself is read: ${asked.join(', ')}`);
  } finally {
    await close();
  }
});

test('the policy allows this script and style alone, and no request', async () => {
  const text = fs.readFileSync(PAGE, 'utf8');
  const hash = (tag) => {
    const inside = text.slice(text.indexOf(`<${tag}>`) + tag.length + 2, text.indexOf(`</${tag}>`));
    return `'sha256-${createHash('sha256').update(inside).digest('base64')}'`;
  };
  const policy = /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(text)[1];
  assert.equal(policy, `default-src 'none'; script-src ${hash('script')} 'wasm-unsafe-eval'; ` +
    `style-src ${hash('style')}; worker-src blob:; img-src blob: data:; base-uri 'none'; form-action 'none'`);
  assert.equal(text.split('<script').length, 2, 'one script');
  assert.equal(/(src|href)="(?!#|data:)/.test(text.replace(/<script>[^]*<\/script>/, '')), false, 'nothing from elsewhere');
  const { page, close } = await open_page();
  try {
    const blocked = await page.evaluate(() => new Promise((done) => {
      document.addEventListener('securitypolicyviolation', (event) => done(event.effectiveDirective));
      fetch('http://127.0.0.1:9/').catch(() => setTimeout(() => done('nothing'), 500));
    }));
    assert.equal(blocked, 'connect-src');
  } finally {
    await close();
  }
});

test('the page is under 600 kB', () => {
  assert.ok(fs.statSync(PAGE).size < 600000, String(fs.statSync(PAGE).size));
});

/* A browser with the page open in it, and what it let slip while it was. */
import { createRequire } from 'node:module';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

const absolute = (name) => path.resolve(process.env[name] || '');
export const BUILD = absolute('BUILD'), PAGE = absolute('PAGE'), FETCHED = absolute('FETCHED');
const require = createRequire(path.join(FETCHED, 'node/'));
const { chromium } = require('playwright-core');
export const axe_path = require.resolve('axe-core/axe.min.js');

const FLAGS = ['--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
  '--disable-background-networking', '--disable-component-update', '--disable-sync'];

/* Runs in the page before its own script: remembers what was drawn and which
 * workers were started, so that a test can wait for the one and ask the other. */
function watch() {
  window.drawn = [];
  window.desks = [];
  document.addEventListener('drawn', (event) => window.drawn.push(event.detail));
  const Plain = window.Worker;
  window.Worker = class extends Plain {
    constructor(...words) {
      super(...words);
      window.desks.push(this);
    }

    terminate() {
      window.desks.splice(window.desks.indexOf(this), 1);
      super.terminate();
    }
  };
}

/* A new browser on a new folder of its own; `close` ends it and clears up. */
export async function open_browser(options = {}) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'recede-page-'));
  const context = await chromium.launchPersistentContext(folder, {
    executablePath: process.env.CHROMIUM || '/usr/bin/chromium', headless: true, args: FLAGS,
    viewport: { width: 1280, height: 860 }, acceptDownloads: true, ...options,
  });
  const page = context.pages()[0] || await context.newPage();
  const said = [], asked = [];
  page.on('console', (message) => said.push(`${message.type()}: ${message.text()}`));
  page.on('pageerror', (error) => said.push(String(error)));
  context.on('request', (request) => {
    if (!/^(blob|data):/.test(request.url())) asked.push(request.url());
  });
  await page.addInitScript(watch);
  return {
    page, said, asked, folder,
    async close() {
      await context.close();
      fs.rmSync(folder, { recursive: true, force: true });
    },
  };
}

export async function open_page(options) {
  const browser = await open_browser(options);
  await load(browser.page);
  return browser;
}

export async function load(page) {
  await page.goto(pathToFileURL(PAGE).href);
  await at_rest(page);
}

/* Waits until the page has drawn and nothing more is under way. */
export async function at_rest(page, since = 0) {
  await page.waitForFunction((count) => {
    const last = window.drawn[window.drawn.length - 1];
    return window.drawn.length > count && !last.moving && !document.getElementById('state').textContent;
  }, since, { timeout: 60000 });
  await page.waitForTimeout(150);
}

/* Does something that makes the page draw, and waits for it. */
export async function and_rest(page, action) {
  const before = await page.evaluate(() => window.drawn.length);
  await action();
  await at_rest(page, before);
}

/* The picture's pixels as a hash, and a few of them. */
export function pixels(page, id = 'picture') {
  return page.evaluate((which) => {
    const canvas = document.getElementById(which), copy = document.createElement('canvas');
    copy.width = canvas.width;
    copy.height = canvas.height;
    const context = copy.getContext('2d', { willReadFrequently: true });
    context.drawImage(canvas, 0, 0);
    const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
    let hash = 7, coloured = 0;
    for (let i = 0; i < data.length; i += 4) {
      hash = Math.imul(hash, 31) + data[i] + 256 * data[i + 1] + 65536 * data[i + 2] | 0;
      if (Math.abs(data[i] - data[i + 1]) > 3 || Math.abs(data[i + 1] - data[i + 2]) > 3) coloured++;
    }
    return { hash, coloured, width: canvas.width, height: canvas.height };
  }, id);
}

/* What the key says, wash by wash. */
export function key_of(page) {
  return page.evaluate(() => [...document.querySelectorAll('#washes > li')].map((entry) => ({
    name: entry.dataset.name, far: entry.querySelector('.far').textContent,
    washes: [...entry.querySelectorAll('.wash')].map((wash) => ({
      where: wash.querySelector('.where').textContent, mix: wash.querySelector('.mix').textContent,
      water: wash.querySelector('.water').textContent, value: wash.querySelector('.value').firstChild.textContent,
    })),
  })));
}

export async function saved_scene(page, action = () => page.click('#save')) {
  const [download] = await Promise.all([page.waitForEvent('download'), action()]);
  return fs.readFileSync(await download.path(), 'utf8');
}

/* What the program says of a scene, with files beside it: its plan, or why it refuses it. */
export function command_line(text, words = ['study'], beside = {}) {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'recede-plan-'));
  const scene = path.join(folder, 'scene.json'), plan = path.join(folder, 'plan.json');
  try {
    fs.writeFileSync(scene, text);
    for (const [name, holds] of Object.entries(beside)) {
      fs.mkdirSync(path.dirname(path.join(folder, name)), { recursive: true });
      fs.writeFileSync(path.join(folder, name), holds);
    }
    execFileSync(path.join(BUILD, 'recede'), [...words, scene, ...(words[0] === 'study' ? ['--json', plan] : [])],
      { stdio: ['ignore', 'ignore', 'pipe'] });
    return { plan: words[0] === 'study' ? JSON.parse(fs.readFileSync(plan, 'utf8')) : null, said: '' };
  } catch (error) {
    return { plan: null, said: String(error.stderr || error) };
  } finally {
    fs.rmSync(folder, { recursive: true, force: true });
  }
}

/* A recipe of a plan file in the words of the key. */
export function said_mix(recipe, ground) {
  const paints = recipe.pigments;
  if (paints.length === 0) return ground === 'lit' ? 'the lit wash as it is' : 'bare paper';
  if (paints.length === 1) return `${paints[0].name} alone`;
  return paints.map(({ name, parts }) => `${parts} part${parts > 1 ? 's' : ''} ${name}`).join(' + ');
}

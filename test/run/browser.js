import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';

let found;

/**
 * A Chromium to test in: one that is there, else Debian's package where we are root, else Playwright's own. Looked for once:
 * whoever will need one asks early, so that it is fetched while other tests run.
 *
 * Gives    its path, or null for Playwright's own; or what to do when there is none to be had
 */
export function findBrowser(root) {
  found ??= lookForBrowser(root);
  return found;
}

async function lookForBrowser(root) {
  const there = await firstThere();
  if (there !== undefined) return { ok: true, path: there };
  console.log('  browser: getting one …');
  if (process.platform === 'linux' && process.getuid?.() === 0) await installDebian();
  const afterwards = await firstThere();
  if (afterwards !== undefined) return { ok: true, path: afterwards };
  await exitOf(process.execPath, ['node_modules/@playwright/test/cli.js', 'install', 'chromium'], {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const last = await firstThere();
  if (last !== undefined) return { ok: true, path: last };
  return {
    ok: false,
    message: 'There is no Chromium or Chrome here, and none could be fetched. Install one, or name it in CHROMIUM.',
  };
}

async function firstThere() {
  const named = process.env.CHROMIUM ? [process.env.CHROMIUM] : [];
  const found = [...named, ...onThePath(), ...usualPlaces()].find((path) => existsSync(path));
  return found ?? (await playwrightsOwn());
}

function onThePath() {
  const withoutWindow = 'chromium-headless-shell';
  const names = [withoutWindow, 'chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome'];
  const folders = (process.env.PATH ?? '').split(delimiter).filter(Boolean);
  return folders.flatMap((folder) => names.map((name) => join(folder, name)));
}

function usualPlaces() {
  const windows = [process.env.PROGRAMFILES, process.env['PROGRAMFILES(X86)'], process.env.LOCALAPPDATA]
    .filter(Boolean)
    .flatMap((base) => [
      join(base, 'Google/Chrome/Application/chrome.exe'),
      join(base, 'Chromium/Application/chrome.exe'),
      join(base, 'Microsoft/Edge/Application/msedge.exe'),
    ]);
  return [
    '/usr/bin/chromium',
    '/snap/bin/chromium',
    '/opt/google/chrome/chrome',
    '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    '/Applications/Chromium.app/Contents/MacOS/Chromium',
    '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
    ...windows,
  ];
}

/** Null stands for "the one Playwright brings", undefined for none. */
async function playwrightsOwn() {
  try {
    const { chromium } = await import('@playwright/test');
    return existsSync(chromium.executablePath()) ? null : undefined;
  } catch {
    return undefined;
  }
}

async function installDebian() {
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  const options = { env, stdio: ['ignore', 'ignore', 'ignore'] };
  await exitOf('apt-get', ['update'], options);
  // The one without a window is smaller and opens a page in two thirds of the time; where there is none, the other.
  for (const name of ['chromium-headless-shell', 'chromium']) {
    if ((await exitOf('apt-get', ['install', '-y', '--no-install-recommends', name], options)) === 0) return;
  }
}

/** Run a program to its end. Gives its exit code; null when it could not be started or was stopped. */
const exitOf = (program, args, options) =>
  new Promise((resolve) => {
    const child = spawn(program, args, options);
    child.once('error', () => resolve(null));
    child.once('close', resolve);
  });

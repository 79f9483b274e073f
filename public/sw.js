/*
 * What a device keeps for when there is no network: the mix that was begun there with its sheet, the emergency page, and
 * the names of the benches. It never shows a board from memory: without the shop nobody knows, so every bench reads
 * KEEP OUT, with how old the last word of the shop is. Each build of the app has a store of its own, named in the address
 * of this script; the next build fetches the same pages anew, and throws away the store before it.
 */

const BUILD = new URL(self.location.href).searchParams.get('build') ?? '';
const STORE = `kept ${BUILD}`;
const BOARD = '/last-board';
const EMERGENCY = '/emergency';

/** So many pages are kept at most; the one that was opened longest ago goes first. */
const MOST_PAGES = 40;
/** The emergency page is fetched again once it is so old. */
const OLD_MS = 10 * 60_000;
const MINUTE_MS = 60_000;
/** After so long without an answer, a page that is kept is shown, or that nobody knows who may stand where. */
const SLOW_MS = 10_000;

/** Pages that are kept as they were, each under its whole address. What a secret link shows is never among them. */
const isKept = ({ pathname }) => ['/mix/do', '/mix/sheet', EMERGENCY].includes(pathname);
const isBoard = ({ pathname }) => ['/today', '/keep-out'].includes(pathname);
const isFile = ({ pathname }) => pathname.startsWith('/_next/static/') || pathname === '/icon.svg';
const addressOf = (url) => `${url.pathname}${url.search}`;

self.addEventListener('install', (event) => {
  // Without a network this fails whole, and the store of the build before goes on.
  event.waitUntil(keepAgain().then(() => self.skipWaiting()));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(forgetOthers().then(() => self.clients.claim()));
});

/** A page says what it is made of, since it was loaded before anything was kept. */
self.addEventListener('message', (event) => {
  const { shop, page, files = [] } = event.data ?? {};
  const told = (async () => {
    await keepShop(shop);
    await Promise.all([page && keepPage(page), keepFiles(files)]);
  })();
  // No network meanwhile: what was kept before stays.
  event.waitUntil(told.catch(() => {}));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || url.origin !== self.location.origin || url.pathname.startsWith('/board/')) return;
  if (isFile(url)) event.respondWith(fileOf(request));
  else if (request.mode === 'navigate') event.respondWith(pageOf(event, url));
});

async function fileOf(request) {
  const store = await caches.open(STORE);
  const kept = await store.match(request);
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) await store.put(request, answer.clone());
  return answer;
}

async function pageOf(event, url) {
  const instead = async () => (isKept(url) && (await keptPage(url))) || boardPage();
  const asked = fetch(event.request);
  try {
    const answer = isKept(url) || isBoard(url) ? await inTime(asked) : await asked;
    // A tunnel that answers for a shop that is away.
    if (answer.status === 502 || answer.status === 504) return await instead();
    if (isKept(url) && isWhole(answer)) event.waitUntil(putPage(url, answer.clone()));
    return answer;
  } catch {
    return instead();
  }
}

const isWhole = (answer) => answer.status === 200 && !answer.redirected;

const inTime = (asked) =>
  Promise.race([asked, new Promise((_, late) => setTimeout(() => late(new Error('late')), SLOW_MS))]);

const keptPage = async (url) => (await caches.open(STORE)).match(addressOf(url));

/** The pages that the builds before kept, as this build makes them. */
async function keepAgain() {
  const addresses = new Set([EMERGENCY]);
  for (const name of await caches.keys()) {
    for (const { url } of await (await caches.open(name)).keys()) {
      if (isKept(new URL(url))) addresses.add(addressOf(new URL(url)));
    }
  }
  for (const address of addresses) await keepPage(address);
}

async function forgetOthers() {
  for (const name of await caches.keys()) if (name !== STORE) await caches.delete(name);
}

/** The emergency page and the benches of the shop that is looked at; those of another shop are no longer kept. */
async function keepShop(shop) {
  const store = await caches.open(STORE);
  const board = await (await store.match(BOARD))?.json();
  const isOther = board?.shop !== shop;
  if (isOther) await Promise.all([store.delete(BOARD), store.delete(EMERGENCY)]);
  // The names of the benches seldom change: once a minute is enough.
  if (isOther || Date.now() - board.at > MINUTE_MS) await keepBoard(store, shop);
  const emergency = await store.match(EMERGENCY);
  if (!emergency || Date.now() - Number(emergency.headers.get('x-kept-at')) > OLD_MS) await keepPage(EMERGENCY);
}

/** The benches by name, and when the shop told of them. */
async function keepBoard(store, shop) {
  const answer = await fetch('/keep-out/now', { cache: 'no-store' });
  if (!answer.ok) return;
  const { shop: name, benches } = await answer.json();
  const told = { at: Date.now(), shop, name, benches: benches.map((bench) => bench.name) };
  await store.put(BOARD, new Response(JSON.stringify(told)));
}

async function keepPage(address) {
  const url = new URL(address, self.location.origin);
  const answer = await fetch(addressOf(url), { credentials: 'same-origin' });
  if (isKept(url) && isWhole(answer)) await putPage(url, answer);
}

/** A page that is kept says so: the time in it is that of then, and no clock goes by it. */
async function putPage(url, answer) {
  const text = await answer.text();
  // A device that is asked for its shop was not shown the page itself.
  if (text.includes('data-which-shop')) return;
  const marked = text.replace('<html ', `<html data-kept="${Date.now()}" `);
  const headers = new Headers(answer.headers);
  headers.delete('content-length');
  headers.delete('content-encoding');
  headers.set('x-kept-at', String(Date.now()));
  const store = await caches.open(STORE);
  await store.delete(addressOf(url));
  await store.put(addressOf(url), new Response(marked, { status: 200, headers }));
  await forgetOldest(store);
  await keepFiles(text.match(/\/_next\/static\/[^"'\\\s<>)]+/g) ?? []);
}

async function forgetOldest(store) {
  const pages = (await store.keys()).filter(({ url }) => ['/mix/do', '/mix/sheet'].includes(new URL(url).pathname));
  for (const page of pages.slice(0, -MOST_PAGES)) await store.delete(page);
}

async function keepFiles(files) {
  const store = await caches.open(STORE);
  for (const file of new Set(files)) {
    const url = new URL(file, self.location.origin);
    if (url.origin !== self.location.origin || !isFile(url) || (await store.match(url.href))) continue;
    const answer = await fetch(url.href);
    if (answer.ok) await store.put(url.href, answer);
  }
}

const escaped = (text) => String(text).replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** How long ago, in words, rounded up to whole minutes. */
function ageOf(at) {
  const minutes = Math.max(1, Math.ceil((Date.now() - at) / 60_000));
  if (minutes < 120) return `${minutes} min`;
  const hours = Math.ceil(minutes / 60);
  return hours < 48 ? `${hours} h` : `${Math.ceil(hours / 24)} days`;
}

/** Every bench as KEEP OUT, and the ways to what is kept here. It looks for the shop again by itself. */
async function boardPage() {
  const store = await caches.open(STORE);
  const board = await (await store.match(BOARD))?.json();
  const mixes = (await store.keys()).map(({ url }) => new URL(url)).filter(({ pathname }) => pathname === '/mix/do');
  const told = board
    ? `The shop was last heard ${ageOf(board.at)} ago. What it said then counts no more.`
    : 'The shop was never heard on this device.';
  const benches = (board?.benches ?? []).map((name) => `<li><b>${escaped(name)}</b>: KEEP OUT (not known)</li>`);
  const links = mixes
    .reverse()
    .map(
      (url, at) =>
        `<li><a href="${escaped(addressOf(url))}">${at === 0 ? 'The mix that was opened here last' : 'An earlier one'}</a></li>`,
    );
  return offlinePage(`<h1>No network: KEEP OUT of every bench</h1>
<p>${told} Ask who sprayed. This page looks for the shop again by itself.</p>
<ul>${benches.join('')}</ul>
<h2>Kept on this device</h2>
<ul>${links.join('')}<li><a href="${EMERGENCY}">In an emergency</a></li></ul>`);
}

const STYLE = `:root{color-scheme:light dark}body{margin:0;padding:1rem;font:1.0625rem/1.4 system-ui,sans-serif;background:#f5f2e9;color:#17231c}
h1{font-size:1.6rem;line-height:1.2}li{padding:.35rem 0}a{display:inline-block;min-height:2.75rem;line-height:2.75rem;color:#a3471d}b{color:#8c1c2b}
@media(prefers-color-scheme:dark){body{background:#121a15;color:#ece8da}a{color:#e2905f}b{color:#f0919b}}`;

/** Asks for the shop every ten seconds, and reads the page anew once it answers. */
const LOOK_AGAIN = `const ask=()=>fetch('/keep-out/now',{cache:'no-store'}).then(({ok})=>{if(ok)location.reload()},()=>{});
setInterval(ask,10000);addEventListener('online',ask)`;

function offlinePage(body) {
  const nonce = crypto.randomUUID();
  const page = `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>No network: KEEP OUT</title><style nonce="${nonce}">${STYLE}</style></head><body><main>${body}</main><script nonce="${nonce}">${LOOK_AGAIN}</script></body></html>`;
  const policy = [
    "default-src 'none'",
    `style-src 'nonce-${nonce}'`,
    `script-src 'nonce-${nonce}'`,
    "connect-src 'self'",
    "base-uri 'none'",
    "form-action 'none'",
  ];
  const headers = {
    'Content-Type': 'text/html; charset=utf-8',
    'Content-Security-Policy': [...policy, "frame-ancestors 'none'"].join('; '),
    'Cache-Control': 'no-store',
  };
  return new Response(page, { status: 200, headers });
}

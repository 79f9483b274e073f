import type { Board, BoardBench } from '@/lib/views/keep-out-board';
import { STYLE } from './board-style';

/** So long a board counts, in milliseconds, by either clock of the device that shows it. */
export const HOLDS_MS = 60_000;

/** The script and the style of a page carry its nonce. */
type Framed = { nonce: string };

/**
 * The board of the sales floor as a page of its own: nothing but states, and one script, which asks again and covers the
 * board once the shop has not confirmed it for a minute. Where no script runs, the style sheet covers it after that minute.
 *
 * Takes    the board; until when it counts, by the clock of the shop
 */
export function boardHtml(board: Board, { nonce, until }: Framed & { until: string }): string {
  const shop = escaped(board.shop ?? 'Keep-out');
  const doubt = board.doubt && `<p class="all"><b>KEEP OUT of every bench.</b> ${DOUBTS[board.doubt]}</p>`;
  return framed(
    nonce,
    shop,
    `<main><div id="b">
<h1>${shop}</h1>
<p class="until">Counts until <b>${escaped(until)}</b></p>
<p>As of ${escaped(board.asOf)}, ${escaped(board.zone)}. As recorded; the label governs.</p>
${doubt ?? ''}
<ul>${board.benches.map(benchHtml).join('')}</ul>
</div>
<div id="c" role="status"><h1>KEEP OUT of every bench (not confirmed)</h1>
<p>The shop has not confirmed this board since ${escaped(board.asOf)}. It counts again once the shop answers; until then ask
somebody who knows.</p></div></main>`,
  );
}

/** A link that was revoked, or never was, says nothing of any bench: so it keeps people out of all of them. */
export const noBoardHtml = ({ nonce }: Framed): string =>
  framed(
    nonce,
    'KEEP OUT',
    `<main><h1>KEEP OUT (not known)</h1>
<p>This link shows no board, or no longer does. Keep out of every bench you are not sure about, and ask the shop for the link
it uses now.</p></main>`,
  );

const framed = (nonce: string, title: string, body: string): string => `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="robots" content="noindex, nofollow">
<noscript><meta http-equiv="refresh" content="15"></noscript>
<title>${title}</title><link rel="icon" href="/icon.svg">
<style nonce="${nonce}">${STYLE}</style></head><body>
${body}
<script nonce="${nonce}">${SCRIPT}</script></body></html>
`;

const DOUBTS: Record<NonNullable<Board['doubt']>, string> = {
  clock: 'The clock of the shop’s computer is in doubt, so no interval can be counted.',
  restored: 'A backup was put back, so what was sprayed after it is not on record.',
  records: 'Something in the shop’s books is lost or was changed.',
  unreadable: 'The shop’s records cannot be read now.',
  reading: 'The shop’s records are being read. This takes a few seconds.',
};

/** The shape of a state, which the word beside it repeats. */
const SHAPES: Record<BoardBench['state'], string> = { closed: '✕', unknown: '?', open: '○' };

function benchHtml({ anchor, name, state, word, when, left }: BoardBench): string {
  const more = [when, left].flatMap((text) => (text === null ? [] : [`<p>${escaped(text)}</p>`]));
  return `<li id="${escaped(anchor)}" data-state="${state}"><h2>${escaped(name)}</h2>
<p class="w"><i aria-hidden="true">${SHAPES[state]}</i> <b>${escaped(word)}</b></p>
${more.join('\n')}</li>`;
}

/**
 * Asks every 10 seconds, sooner while the board is covered, and reads the page anew once the shop answers. The age of the
 * page goes by two clocks, since one may stand still while a device sleeps and the other may be set.
 */
const SCRIPT = `(()=>{const d=document,b=d.body,n=()=>performance.now(),at=Date.now()-n();let asked=n(),busy=false,kept=false;
const old=()=>{const w=Date.now()-at;return kept||n()>${HOLDS_MS}||w>${HOLDS_MS}||n()-w>${HOLDS_MS}};
const show=()=>b.toggleAttribute('data-old',old());
const ask=async()=>{if(busy)return;busy=true;asked=n();
try{const a=await fetch(location.href,{cache:'no-store',redirect:'error',signal:AbortSignal.timeout(8000)});
if(a.ok||a.status===404){location.reload();return}}catch{}busy=false};
const tick=()=>{show();if(n()-asked>(old()?5000:10000))ask()};
const back=(e)=>{if(d.visibilityState!=='visible'||(e.type==='pageshow'&&!e.persisted))return;kept=true;show();ask()};
b.setAttribute('data-alive','');setInterval(tick,1000);
for(const e of ['visibilitychange','resume'])d.addEventListener(e,back);
for(const e of ['pageshow','online'])addEventListener(e,back)})()`;

const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

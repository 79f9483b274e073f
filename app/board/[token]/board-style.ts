/** The style of the board of the sales floor, to be read across a room; colours as in the pages of the shop. */
export const STYLE = `:root{color-scheme:light dark;--paper:#f5f2e9;--sheet:#fffdf7;--ink:#17231c;--oxide:#8c1c2b;--on:#fff}
@media(prefers-color-scheme:dark){:root{--paper:#121a15;--sheet:#1b2620;--ink:#ece8da;--oxide:#f0919b;--on:#121a15}}
*{box-sizing:border-box}body{margin:0;padding:1rem;font:1.125rem/1.35 system-ui,sans-serif;background:var(--paper);color:var(--ink)}
h1,h2,p{margin:0 0 .5rem;overflow-wrap:anywhere}h1{font-size:1.9rem;line-height:1.15}h2{font-size:1.4rem}
.until{font-size:1.5rem}.until b{font-size:2.2rem;font-variant-numeric:tabular-nums}
ul{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,20rem),1fr));gap:1rem;margin:1rem 0;padding:0;list-style:none}
li{padding:1rem;border:3px solid var(--ink);background:var(--sheet)}
li[data-state=closed],li[data-state=unknown],.all,#c{border:3px solid var(--oxide);background:var(--oxide);color:var(--on)}
.w{font-size:clamp(1.6rem,1.2rem + 2vw,2.4rem);line-height:1.1}.w i{font-style:normal}.all,#c{padding:1rem}
#c{display:none}[data-old] #b{display:none}[data-old] #c{display:block}
body:not([data-alive]) #b{animation:go 0s 60s forwards}
body:not([data-alive]) #c{display:block;position:fixed;inset:0;visibility:hidden;animation:come 0s 60s forwards}
@keyframes go{to{visibility:hidden}}@keyframes come{to{visibility:visible}}`;

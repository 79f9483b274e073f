/**
 * `npm start`: from a fresh copy to a running shop. Plain JavaScript with nothing but Node, because it has to run
 * before anything is installed, and on a Node that is too old it still has to say so.
 */
const TOO_OLD = tooOld(process.versions.node);
if (TOO_OLD) {
  console.error(`\n  ${TOO_OLD}\n`);
  process.exitCode = 1;
} else {
  const [developing, network, plain] = ['--dev', '--network', '--plain'].map((option) => process.argv.includes(option));
  import('./start/start-up.js').then(({ startUp }) => startUp({ developing, asked: { network, plain } }));
}

/** What to say about a Node that cannot run this shop, or null. */
function tooOld(version) {
  const [major, minor] = version.split('.').map(Number);
  const enough = (major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major >= 24;
  if (enough) return null;
  return `Bench & Bottle needs Node 20.19 or newer (or 22.12 or newer, or 24); this is Node ${version}. Get a newer one from https://nodejs.org, then run npm start again.`;
}

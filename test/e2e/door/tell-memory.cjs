/**
 * Read in by the server that is knocked about, before anything else: asked by a signal, it clears away what nobody
 * holds any more and writes down how many bytes are still held. Plain CommonJS, because Node requires it.
 */
const { renameSync, writeFileSync } = require('node:fs');
const { setFlagsFromString } = require('node:v8');
const { runInNewContext } = require('node:vm');

setFlagsFromString('--expose-gc');
const clearAway = runInNewContext('gc');

if (process.platform !== 'win32') {
  process.on('SIGUSR2', () => {
    clearAway();
    // What was waiting for that lets go of more.
    setImmediate(() => {
      clearAway();
      const { heapUsed, external } = process.memoryUsage();
      const file = `${process.env.DATA_DIR}/memory-held`;
      writeFileSync(`${file}.new`, String(heapUsed + external));
      renameSync(`${file}.new`, file);
    });
  });
}

/**
 * Something the owner can mend. Thrown where it is found and told once, without a stack.
 *
 * Takes    what is wrong, and what to do about it: whole sentences
 */
export function trouble(wrong, mend) {
  return Object.assign(new Error(wrong), { mend });
}

/** Run a piece of work; a trouble is told and ends the process, anything else is a bug and keeps its stack. */
export async function tellTroubles(work) {
  try {
    await work();
  } catch (error) {
    if (error?.mend === undefined) throw error;
    console.error(`\n  ${error.message}\n  ${error.mend}\n`);
    process.exit(1);
  }
}

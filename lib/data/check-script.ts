import { checkHere } from './check-here';

/* The whole check as a process of its own: the file's path goes in, what was found comes out as JSON. */
process.stdout.write(JSON.stringify(await checkHere(process.argv[2] ?? '')));

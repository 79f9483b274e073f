import type { TestProject } from 'vitest/node';
import { startPostgresql } from './postgresql.js';
import { makeTemplate } from './postgresql-databases';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The address of the server on which the tests of this project run. */
    postgresql: string | undefined;
  }
}

/** One PostgreSQL for all test files that run on it. */
export default async function setup(project: TestProject): Promise<() => void> {
  const server = await startPostgresql();
  if (!server) throw new Error('PostgreSQL is not installed here.');
  await makeTemplate(server.url);
  project.provide('postgresql', server.url);
  return server.stop;
}

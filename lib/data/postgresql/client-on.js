import { PrismaPg } from '@prisma/adapter-pg';
import { PrismaClient } from '@/prisma/generated/postgresql/client';

/**
 * The client on some connections. Both clients are made of one schema, and SQLite's types are the narrower, so they serve
 * both.
 *
 * @param {import('pg').Pool} pool closed together with the client
 * @returns {import('@/prisma/generated/client').PrismaClient}
 */
export const clientOn = (pool) => new PrismaClient({ adapter: new PrismaPg(pool, { disposeExternalPool: true }) });

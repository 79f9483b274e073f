import { randomBytes, scrypt, timingSafeEqual } from 'node:crypto';

/*
 * How a password is kept: by scrypt, whose costs stand beside the hash, so that they can be raised later. 2^15 × 8 bytes ×
 * 128 are 32 MB and some 80 ms for each try (OWASP, Password Storage: N = 2^15, r = 8, p = 3).
 */
const COST = { N: 2 ** 15, r: 8, p: 3 };
const MOST_MEMORY = 64 * 1024 * 1024;
const SALT_BYTES = 16;
const HASH_BYTES = 32;

/** A password as it is kept. Text that looks alike is taken for the same, however a keyboard composes it. */
export async function keptPassword(password: string): Promise<string> {
  const salt = randomBytes(SALT_BYTES);
  const hash = await stretched(password, salt, COST);
  return ['scrypt', COST.N, COST.r, COST.p, salt.toString('base64url'), hash.toString('base64url')].join(' ');
}

/** Whether a password is the one that is kept. It takes as long where none is kept, so that time tells nothing. */
export async function isPassword(password: string, kept: string | null): Promise<boolean> {
  const [scheme, n, r, p, salt = '', hash = ''] = (kept ?? NOBODYS).split(' ');
  if (scheme !== 'scrypt') throw new Error(`A password is kept by ${scheme}, which is not known here.`);
  const cost = { N: Number(n), r: Number(r), p: Number(p) };
  const wanted = Buffer.from(hash, 'base64url');
  const got = await stretched(password, Buffer.from(salt, 'base64url'), cost);
  return wanted.length === got.length && timingSafeEqual(wanted, got) && kept !== null;
}

/** Compared with where there is no such person. Nothing gives this hash. */
const NOBODYS = ['scrypt', COST.N, COST.r, COST.p, 'bm9ib2R5LW5vYm9keQ', 'A'.repeat(43)].join(' ');

function stretched(password: string, salt: Buffer, cost: typeof COST): Promise<Buffer> {
  return new Promise((resolve, reject) => {
    const options = { ...cost, maxmem: MOST_MEMORY };
    scrypt(password.normalize('NFKC'), salt, HASH_BYTES, options, (error, hash) =>
      error ? reject(error) : resolve(hash),
    );
  });
}

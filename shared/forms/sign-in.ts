import { z } from 'zod';
import { LONGEST_PASSWORD } from '../access/password-fault';
import { EnteredAs } from './entered-as';

/** A page of this shop, to go on to: never an address elsewhere. */
const onwards = () =>
  z
    .string()
    .max(2_000)
    .regex(/^\/(?![/\\])[^\\\p{C}]*$/u)
    .catch('/');

const password = () =>
  z
    .string()
    .min(1, { error: 'Write the password.' })
    .max(LONGEST_PASSWORD, { error: `Use at most ${LONGEST_PASSWORD} characters.` });

/** Somebody signs in. */
export const SignInForm = z.strictObject({
  name: EnteredAs.shape.who,
  password: password(),
  to: onwards().default('/'),
});

/** The first person makes a sign-in, and owns every shop here. */
export const OwnerForm = z.strictObject({
  name: EnteredAs.shape.who,
  password: password(),
  /** The code out of the terminal, where others reach this shop. */
  code: z.string().max(40).default(''),
});

/** Somebody signs out. */
export const SignOutForm = z.strictObject({});

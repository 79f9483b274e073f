import { z } from 'zod';
import { LONGEST_PASSWORD } from '../access/password-fault';
import { ROLES } from '../access/roles';
import { shopId } from './command-fields';
import { EnteredAs } from './entered-as';

const id = () => z.string().min(1).max(100);
const role = () => z.enum(ROLES, { error: 'Choose what this person does here.' });

const password = () =>
  z
    .string()
    .min(1, { error: 'Write a password.' })
    .max(LONGEST_PASSWORD, { error: `Use at most ${LONGEST_PASSWORD} characters.` });

/** Somebody is to work in a shop. */
export const InviteForm = z.strictObject({ shop: shopId(), name: EnteredAs.shape.who, role: role() });

/** Somebody who works here does something else from now on. */
export const RoleForm = z.strictObject({ shop: shopId(), person: id(), role: role() });

/** Something about one person who works in a shop: stop, come back, a new password. */
export const PersonForm = z.strictObject({ shop: shopId(), person: id() });

/** A device of such a person is lost. */
export const DeviceForm = z.strictObject({ shop: shopId(), device: id() });

/** An invitation is taken back. */
export const TakeBackInvitation = z.strictObject({ shop: shopId(), invitation: id() });

/** Whoever was invited comes in. The name is empty where the invitation is for somebody who is known. */
export const InvitedForm = z.strictObject({
  code: z.string().max(100),
  name: EnteredAs.shape.who.or(z.literal('')),
  password: password(),
});

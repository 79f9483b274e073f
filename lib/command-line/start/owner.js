/**
 * True once somebody owns the shop and can sign in. There is no sign-in yet, so nobody does, and nothing is served beyond
 * this machine.
 */
export const hasOwner = () => false;

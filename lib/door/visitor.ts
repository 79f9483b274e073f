/** Who is at the door. Until there is sign-in, whoever reaches this machine's own address is the owner. */
export type Visitor = { actor: 'owner' };

/**
 * The person behind a request. The one place where sign-in and roles will be checked,
 * for pages, forms and the HTTP API alike.
 */
export function visitorOf(): Visitor {
  return { actor: 'owner' };
}

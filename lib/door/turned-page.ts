/**
 * The page for a person who followed a link on another site, in a mail or in a message: one more tap, from a page of our
 * own, opens what the link names. It has no script and no style, so nothing in the address can do anything.
 *
 * Takes    a path on this machine, as it was asked for
 */
export function turnedPage(path: string): string {
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Bench &amp; Bottle</title>
<h1><a href="${escaped(path)}">Open this page of Bench &amp; Bottle</a></h1>
<p>A link from outside led here, so nothing of the shop is shown yet.</p>
</html>
`;
}

const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

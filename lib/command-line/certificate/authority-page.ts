/** What a phone is shown: the authority to download, and what to do with it. */
export type AuthorityPage = { fingerprint: string; lastDay: string; shopUrl: string };

/** The steps by which a phone comes to trust the shop, each in the words of its own settings. */
const STEPS: [phone: string, steps: string[]][] = [
  [
    'iPhone and iPad',
    [
      'Download the file and allow it.',
      'Settings, Profile downloaded: Install.',
      'Settings, General, About, Certificate trust settings: switch it on.',
    ],
  ],
  [
    'Android',
    [
      'Download the file.',
      'Settings, Security, More security settings, Install from storage: CA certificate, Install anyway.',
      'Choose the file.',
    ],
  ],
  [
    'A computer',
    ['Download the file.', 'Open the certificate settings of the browser or the system, and add it as an authority.'],
  ],
];

/** The page that the square code leads to. It needs no script, and shows nothing of the shop. */
export function authorityPage({ fingerprint, lastDay, shopUrl }: AuthorityPage): string {
  const steps = STEPS.map(
    ([phone, ones]) => `<h2>${phone}</h2>\n<ol>${ones.map((one) => `<li>${one}</li>`).join('')}</ol>`,
  );
  return `<!doctype html>
<html lang="en">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Trust this shop</title>
<style>body{font:1.1rem/1.5 sans-serif;max-width:34rem;margin:1rem auto;padding:0 1rem}code{overflow-wrap:anywhere}</style>
<h1>Trust this shop on this device</h1>
<p>Compare these signs with the window on the shop’s computer first. If one differs, stop.</p>
<p><code>${fingerprint}</code></p>
<p><a href="/authority.crt"><b>Download the shop’s authority</b></a> (it counts until ${lastDay})</p>
${steps.join('\n')}
<p>Then open <a href="${shopUrl}">${shopUrl}</a>: it opens without a warning.</p>
</html>
`;
}

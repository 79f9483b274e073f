import { createServer, type IncomingHttpHeaders, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';

type Posted = { method: string; path: string; headers: IncomingHttpHeaders; body: string };

const open: Server[] = [];
/** Close every one that was opened, after each test. */
export function closeOtherPrograms(): void {
  for (const server of open.splice(0)) server.close().closeAllConnections();
}

/** A real program on this machine that is told of alerts, and answers as it is asked to. */
export async function otherProgram(answer: () => { status: number; location?: string } = () => ({ status: 204 })) {
  const posted: Posted[] = [];
  const server = createServer((request, response) => {
    let body = '';
    request.on('data', (chunk) => {
      body += String(chunk);
    });
    request.on('end', () => {
      posted.push({ method: request.method ?? '', path: request.url ?? '', headers: request.headers, body });
      const { status, location } = answer();
      response.writeHead(status, location === undefined ? {} : { location }).end();
    });
  });
  open.push(server);
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return { posted, port, url: `http://127.0.0.1:${port}/alerts` };
}

import { isIP } from 'node:net';

/** Where the workbench listens, and by which names it may be asked. */
export interface Reach {
  readonly isLoopback: boolean;
  readonly isAnyAddress: boolean;
  /** Names and addresses that the server answers to, as they stand in the bar of a browser. */
  readonly hosts: readonly string[];
  /** Of these, what the maker is told. */
  readonly shown: readonly string[];
}

const bracketed = (host: string): string => (isIP(host) === 6 ? `[${host}]` : host.toLowerCase());

/** Whether a host means this machine and no other. */
function isOwn(host: string): boolean {
  return host === 'localhost' || host === '::1' || (isIP(host) === 4 && host.startsWith('127.'));
}

/**
 * What listening on a host comes to.
 *
 * @param host - A name, an address, or `0.0.0.0` or `::` for every network of this machine.
 * @param own - Name of this machine, and its addresses on its networks.
 */
export function reachOf(
  host: string,
  own: { readonly name: string; readonly addresses: readonly string[] },
): Reach {
  if (isOwn(host)) {
    const hosts = [...new Set([bracketed(host), '127.0.0.1', 'localhost', '[::1]'])];
    return { isLoopback: true, isAnyAddress: false, hosts, shown: [bracketed(host)] };
  }
  if (host !== '0.0.0.0' && host !== '::')
    return { isLoopback: false, isAnyAddress: false, hosts: [bracketed(host)], shown: [bracketed(host)] };
  const name = own.name.toLowerCase();
  return {
    isLoopback: false,
    isAnyAddress: true,
    hosts: ['127.0.0.1', 'localhost', '[::1]', name, `${name}.local`],
    shown: own.addresses.length > 0 ? own.addresses.map(bracketed) : [name],
  };
}

/** The whole address, the token behind `#`, where no server and no log of one ever sees it. */
export function addressOf(host: string, port: string, token: string | null): string {
  return `http://${host}:${port}/${token === null ? '' : `#token=${encodeURIComponent(token)}`}`;
}

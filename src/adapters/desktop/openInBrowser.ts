import { spawn } from 'node:child_process';

/** How each system opens an address with the reader's own browser; what is not named here does as most do. */
const openers: Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>> = {
  darwin: ['open'],
  // Runs no shell of its own, so nothing in an address is a command.
  win32: ['rundll32', 'url.dll,FileProtocolHandler'],
};

/**
 * Opens an address in the reader's browser, if there is one; nothing waits for it.
 *
 * @returns Whether something was started that may open it.
 */
export function openInBrowser(url: string, platform: NodeJS.Platform = process.platform): Promise<boolean> {
  const [program, ...words] = openers[platform] ?? ['xdg-open'];
  return new Promise((done) => {
    const child = spawn(program, [...words, url], { detached: true, stdio: 'ignore' });
    child.once('error', () => done(false));
    child.once('spawn', () => {
      child.unref();
      done(true);
    });
  });
}

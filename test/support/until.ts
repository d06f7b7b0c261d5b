/** Waits until something is so, and says what it waited for when it never is. */
export async function until(
  what: string,
  isSo: () => boolean | Promise<boolean>,
  mostMs = 20_000,
): Promise<void> {
  const endMs = Date.now() + mostMs;
  while (!(await isSo())) {
    if (Date.now() > endMs) throw new Error(`Waited in vain: ${what}`);
    await new Promise((done) => setTimeout(done, 30));
  }
}

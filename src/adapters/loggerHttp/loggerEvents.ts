/**
 * Hears what a running logger tells, until it ends or is no longer wanted.
 *
 * @param url - Where the logger listens on this machine.
 * @param hear - Each event's name, and its data as read from its JSON.
 */
export async function loggerEvents(
  url: string,
  hear: (event: string, data: unknown) => void,
  stop: AbortSignal,
): Promise<void> {
  const { body } = await fetch(`${url}/api/events`, { signal: stop });
  if (!body) return;
  const decoder = new TextDecoder();
  let waiting = '';
  for await (const bytes of body) {
    waiting += decoder.decode(bytes, { stream: true });
    const events = waiting.split('\n\n');
    waiting = events.pop()!;
    for (const event of events) {
      const data = /^data: (.*)$/m.exec(event)?.[1];
      if (data !== undefined) hear(/^event: (.*)$/m.exec(event)?.[1] ?? '', JSON.parse(data));
    }
  }
}

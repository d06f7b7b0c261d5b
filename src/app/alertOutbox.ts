import type { Alert, AlertChannel, Clock } from '../ports/index.ts';

/** First and longest wait before an alert is sent again. [ms] */
const AGAIN_MS = 10_000;
const AGAIN_MOST_MS = 600_000;
/** Alerts that may wait for one channel; past this the oldest go, and that is said. [-] */
const WAITING_MOST = 200;

/** Sends alerts through one channel, in order, and again until the other side has taken them. */
export class AlertOutbox {
  readonly #channel: AlertChannel;
  readonly #clock: Clock;
  readonly #onTrouble: (text: string) => void;
  readonly #waiting: Alert[] = [];
  #againMs = AGAIN_MS;
  #callOff: (() => void) | null = null;
  #sending: Promise<void> = Promise.resolve();
  #isSending = false;

  constructor(channel: AlertChannel, clock: Clock, onTrouble: (text: string) => void) {
    this.#channel = channel;
    this.#clock = clock;
    this.#onTrouble = onTrouble;
  }

  put(alert: Alert): void {
    this.#waiting.push(alert);
    if (this.#waiting.length > WAITING_MOST) {
      const lost = this.#waiting.shift()!;
      this.#onTrouble(`${this.#channel.name}: too many alerts wait; not sent: ${lost.state} ${lost.fault}`);
    }
    if (!this.#isSending && !this.#callOff) this.#sending = this.#send();
  }

  async #send(): Promise<void> {
    this.#isSending = true;
    try {
      while (this.#waiting.length > 0) {
        await this.#channel.send(this.#waiting[0]!);
        this.#waiting.shift();
        this.#againMs = AGAIN_MS;
      }
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      this.#onTrouble(
        `${this.#channel.name}: ${why}; ${this.#waiting.length} alerts wait and are sent again.`,
      );
      this.#callOff = this.#clock.after(this.#againMs, () => {
        this.#callOff = null;
        this.#sending = this.#send();
      });
      this.#againMs = Math.min(AGAIN_MOST_MS, 2 * this.#againMs);
    } finally {
      this.#isSending = false;
    }
  }

  /** Ends once what is on its way has gone; says what never went. */
  async close(): Promise<void> {
    await this.#sending;
    this.#callOff?.();
    if (this.#waiting.length > 0)
      this.#onTrouble(`${this.#channel.name}: ${this.#waiting.length} alerts could not be sent.`);
    await this.#channel.close();
  }
}

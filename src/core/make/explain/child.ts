import { element, joined, type Markup } from '../../report/index.ts';
import { mostChanges, type Explained } from './explained.ts';

/** What an eye of the head sees, for a child. */
function eyesText({ head }: Explained): string {
  const count = head.channels.length;
  const eyes = count === 1 ? 'One small eye looks' : `${count} small eyes look`;
  if (head.marks) return `${eyes} at it. Each eye tells colours apart and gives each colour a number.`;
  return `${eyes} at it. An eye can only say one of two things: “I see light” or “I see dark”. We write 1 and 0 for that.`;
}

function placesText({ head }: Explained): string {
  const { positions, words, absolute } = head.disc.code;
  const example = words[Math.floor(positions / 2)]!;
  const said = `What all eyes say together is a word, such as ${example}.`;
  if (!absolute)
    return `${said} Some places share a word, so the controller also has to count how the word changes, like counting stairs in the dark.`;
  return `${said} Go round once and you pass ${positions} places, and no two of them have the same word. So nobody has to count. Switch it off, turn it, switch it on: one look, and it knows where it stands.`;
}

function gameText(explained: Explained): string {
  const most = mostChanges(explained);
  const game = 'Try it: turn the disc by one place and watch the numbers.';
  return most === 1
    ? `${game} Only one of them changes. That is a trick: if an eye is a little early or late, the answer is wrong by one small step at most, never by a big one.`
    : `${game} Sometimes ${most} of them change. If they do not change at the very same time, the controller reads a wrong place for a blink.`;
}

/** Told for a child. */
export function childTelling(explained: Explained): Markup {
  const { instrument, head } = explained;
  return joined([
    element(
      'p',
      {},
      `This disc sits on a shaft and turns with it. When the shaft of ${instrument.name} turns, so does the disc.`,
    ),
    element('p', {}, eyesText(explained)),
    element('p', {}, placesText(explained)),
    element('p', {}, gameText(explained)),
    element(
      'p',
      {},
      head.disc.code.absolute
        ? 'A list in the controller says which word means which direction. It looks the word up, as you would in a dictionary, and writes the direction down.'
        : 'A list in the controller says which change means which direction.',
    ),
  ]);
}

import type { WeighedNeed } from '../../../app/api.ts';
import { shownDegrees, shownNumber } from '../../parts/numbers.ts';
import { words } from '../../words/en.ts';

type Way = NonNullable<WeighedNeed['weighing']>['principles'][number];

function figures({ figures: reckoned, costClass, upToEur, workHours }: Way): [string, string][] {
  const { weigh } = words;
  const { stepDeg, largestErrorDeg, lifeYears } = reckoned;
  return [
    [weigh.step, shownDegrees(stepDeg)],
    [weigh.error, shownDegrees(largestErrorDeg, 1)],
    [weigh.life, lifeYears === null ? weigh.noWear : weigh.years(shownNumber(lifeYears, 1))],
    [weigh.parts, weigh.upTo(costClass, shownNumber(upToEur))],
    [weigh.work, weigh.hours(shownNumber(workHours))],
  ];
}

/** One way of sensing: its figures, and what speaks for and against it. */
function OneWay({ way, isFirst }: { readonly way: Way; readonly isFirst: boolean }) {
  const { weigh } = words;
  const sides = [
    { title: weigh.bad, sign: '−', told: way.findings.filter(({ isGood }) => !isGood) },
    { title: weigh.good, sign: '+', told: way.findings.filter(({ isGood }) => isGood) },
  ];
  return (
    <details class="panel way" data-verdict={way.verdict} open={isFirst}>
      <summary>
        <h3>{way.title}</h3> <span class="tag">{weigh.service[way.verdict]}</span>
      </summary>
      <p>{way.about}</p>
      <dl class="readings">
        {figures(way).map(([name, value]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      {sides.map(({ title, sign, told }) =>
        told.length === 0 ? null : (
          <section key={title}>
            <h4>{title}</h4>
            <ul class="told">
              {told.map(({ text }) => (
                <li key={text}>
                  <span aria-hidden="true">{sign}</span> {text}
                </li>
              ))}
            </ul>
          </section>
        ),
      )}
      <p class="hint">
        {weigh.bring}: {way.parts.join(', ')}.
      </p>
    </details>
  );
}

/** Every way of sensing, best first. */
export function Ways({ ways }: { readonly ways: readonly Way[] }) {
  return (
    <section>
      <h2>{words.weigh.ways}</h2>
      {ways.map((way, index) => (
        <OneWay key={way.name} way={way} isFirst={index === 0} />
      ))}
    </section>
  );
}

// `npm run bench`: every question in bench/, each as ratios against a stated rival in this one run.
import { readdirSync } from 'node:fs';

const wanted = process.argv.slice(2);
const folder = new URL('../bench/', import.meta.url);
const questions = readdirSync(folder).filter((name) => name.endsWith('.ts') && !name.endsWith('.test.ts'));

for (const name of questions.sort()) {
  if (wanted.length > 0 && !wanted.some((word) => name.startsWith(word))) continue;
  process.stdout.write(`\n${name.replace(/[.]ts$/, '')}\n`);
  const { run } = await import(new URL(name, folder).href);
  await run((row) => process.stdout.write(`  ${row.name}: ${row.value} ${row.unit}\n`));
}

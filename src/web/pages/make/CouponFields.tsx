import { FileField } from '../../parts/FileField.tsx';
import { schemaAt } from '../../parts/schemaField.ts';
import type { PageParts } from '../../shell/pageParts.ts';
import { words } from '../../words/en.ts';

const GROUP = 'disc.process.measured';

/** The numbers measured on the coupon; every later drawing uses them. */
export function CouponFields({ project, schema }: Pick<PageParts, 'project' | 'schema'>) {
  const group = schemaAt(schema, GROUP.split('.'));
  const fields = Object.entries(group?.properties ?? {}).filter(([, field]) => !field.properties);
  return (
    <details>
      <summary>{words.make.couponFields}</summary>
      <div class="fields coupon">
        {fields.map(([name]) => (
          <FileField key={name} path={`${GROUP}.${name}`} project={project} schema={schema} />
        ))}
      </div>
    </details>
  );
}

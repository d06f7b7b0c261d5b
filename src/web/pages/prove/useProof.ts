import { useEffect, useState } from 'preact/hooks';
import type { Answer } from '../../engine/answer.ts';
import type { ProofView } from '../../engine/proofView.ts';
import type { QuickProof } from '../../engine/quickProof.ts';
import { filesOf } from '../../project/project.ts';
import { useStore } from '../../project/store.ts';
import type { PageParts } from '../../shell/pageParts.ts';

/** Builds while a slider is dragged, and once it rests. The seed is that of the command, so that both say the same. */
const FEW_BUILDS = 100;
const BUILDS = 1000;
/** The page's address may ask for another count: fewer for a slow machine (`?builds=200`), more for a closer yield. */
const asked = Number(new URLSearchParams(location.search).get('builds'));
const restBuilds = Number.isInteger(asked) && asked >= FEW_BUILDS && asked <= 10_000 ? asked : BUILDS;
const SEED = 1;
/** Rest after the last change before the whole proof is made. [ms] */
const REST_MS = 700;

/** The proof of the file as it is: quick figures that follow every change, and the whole once it rests. */
export function useProof({ project, background }: Pick<PageParts, 'project' | 'background'>) {
  const { history, beside } = useStore(project.state);
  const [quick, setQuick] = useState<Answer<QuickProof> | null>(null);
  const [full, setFull] = useState<Answer<ProofView> | null>(null);
  const [isRefining, refine] = useState(true);
  useEffect(() => {
    let isWanted = true;
    const files = filesOf(project.state.get());
    const few = { builds: FEW_BUILDS, seed: SEED };
    const many = { builds: restBuilds, seed: SEED };
    const follow = async (choice: typeof few): Promise<void> => {
      const found = await background.run<Answer<QuickProof>>(
        (engine) => engine.quickProof(files, choice),
        choice === few ? 'short' : 'long',
      );
      if (found) setQuick(found);
    };
    refine(true);
    void follow(few);
    const timer = setTimeout(async () => {
      await follow(many);
      if (!isWanted) return;
      const proof = await background.run<Answer<ProofView>>((engine) => engine.prove(files, many), 'long');
      if (!isWanted || proof === null) return;
      setFull(proof);
      refine(false);
    }, REST_MS);
    return () => {
      isWanted = false;
      clearTimeout(timer);
    };
  }, [history.text, beside]);
  useEffect(() => () => background.stop(), [background]);
  // A proof of the file as it was is not shown as if it were of the file as it is.
  return { quick, full: isRefining ? null : full, isRefining };
}

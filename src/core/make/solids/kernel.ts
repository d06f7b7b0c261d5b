import type { CrossSection, Manifold } from 'manifold-3d';

/** What we use of the solid kernel. */
export interface SolidKernel {
  readonly Manifold: typeof Manifold;
  readonly CrossSection: typeof CrossSection;
}

let loading: Promise<SolidKernel> | null = null;

async function load(): Promise<SolidKernel> {
  // Loaded when first needed: a page that only shows a disc never fetches it.
  const { default: start } = await import('manifold-3d');
  const kernel = await start();
  kernel.setup();
  return kernel;
}

/** The solid kernel, started once. */
export function solidKernel(): Promise<SolidKernel> {
  return (loading ??= load());
}

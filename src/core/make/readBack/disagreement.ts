import type { Problem } from '../../error/index.ts';

/**
 * The problem of a file that does not say what it should.
 *
 * @param where - The file, and the place in it.
 * @param what - One sentence about the kind of mistake.
 * @param got - What was read back.
 * @param allowed - What should be there.
 */
export function disagreement(where: string, what: string, got: string, allowed: string): Problem {
  return {
    code: 'make/file-disagrees',
    what: `${what} Nothing is written.`,
    where,
    got,
    allowed,
    fix: 'This is a fault in vanewright, not in your file: report it with your instrument file, and use another format meanwhile.',
  };
}

/** Choices offered for a back that cannot be planned, or lies the wrong way: each is carried out, and undone. */
import { describe, expect, test } from 'vitest';
import { type Mending, mendsFor } from '../../src/state/mends.ts';
import { example, standardSettings } from '../../src/state/project.ts';
import type { Project } from '../../src/state/snapshot.ts';
import { openStore } from '../../src/state/store.ts';

const panel = (sides: number[], more: Partial<Project> = {}): Project => ({
  ...example,
  counted: 'stitches-only',
  sideCount: sides.length,
  ...more,
  texts: {
    ...Object.fromEntries(sides.map((count, side) => [`side.${side}`, `${count}`])),
    corner: '2',
    ...more.texts,
  },
});

function opened(project: Project) {
  const store = openStore({
    project: example,
    settings: standardSettings,
    tab: 'edge',
    place: 0,
    answered: [],
  });
  store.send({ type: 'CHOOSE', project });
  return store;
}

const kinds = (mends: Mending[]) => mends.map(({ kind }) => kind);

describe('what would mend it', () => {
  test('is nothing where all meets', () =>
    expect(mendsFor(opened(panel([40, 30, 40, 30])).snapshot())).toEqual([]));

  test.each<[string, Project, string[]]>([
    [
      'arms too large for a short side: smaller ones, or fewer rounds',
      panel([40, 6, 40, 6], { edgingCount: 2, texts: { 'arm.0': '2', 'arm.1': '2' } }),
      ['arm', 'rounds'],
    ],
    [
      'a start too far from the first corner',
      panel([40, 30, 40, 30], { texts: { lead: '70' } }),
      ['lead', 'start'],
    ],
    [
      'a back turned by a side',
      panel([40, 34, 28, 22], { mishaps: [{ kind: 'join-wrong-side', round: 'join', count: 1 }] }),
      ['turn'],
    ],
    [
      'a back worked in the front’s order',
      panel([40, 34, 28, 22], { mishaps: [{ kind: 'order-not-mirrored', round: 'plan' }] }),
      ['mirror'],
    ],
    [
      'a join begun elsewhere',
      panel([40, 34, 28, 22], { mishaps: [{ kind: 'join-offset', round: 'join', count: 2 }] }),
      ['join-start'],
    ],
  ])('%s', (_, project, offered) => {
    const store = opened(project);
    const before = store.snapshot();
    expect(before.isStale || before.making.pairing.verdict.kind !== 'meets').toBe(true);
    const mends = mendsFor(before);
    expect(kinds(mends)).toEqual(offered);
    for (const mend of mends) {
      store.send({ type: 'CHOOSE', project: mend.project });
      const { problems, making } = store.snapshot();
      expect(problems).toEqual([]);
      expect(making.pairing.verdict.kind).toBe('meets');
      // Counts are never touched.
      expect(making.edge.sides).toEqual(
        project.texts &&
          Array.from({ length: project.sideCount }, (_one, side) => Number(project.texts[`side.${side}`])),
      );
      store.send({ type: 'UNDO' });
      expect(store.snapshot().project).toEqual(before.project);
    }
    store.stop();
  });

  test('keeps what is nearest to what was chosen: arms one smaller where that is enough', () => {
    const [first] = mendsFor(opened(panel([40, 5, 40, 5], { texts: { 'arm.0': '3' } })).snapshot());
    expect(first).toMatchObject({ kind: 'arm', arm: 2 });
  });
});

/** The addresses of the panel at hand. Packing takes a moment: they come with the next rendering. */
import { writeLink } from '../input/link.ts';
import type { Snapshot, Tab } from '../state/snapshot.ts';

/** Where a sent panel opens: on its counts, or on what went wrong. */
export type LinkTab = Extract<Tab, 'edge' | 'wrong'>;
export type Links = Record<LinkTab, string>;

export function openLinks(onChange: () => void): (snapshot: Snapshot) => Links | null {
  let packed: { of: Snapshot; links: Links } | null = null;
  let asked: Snapshot | null = null;
  const pack = async (snapshot: Snapshot): Promise<void> => {
    const { project, place, answered, settings } = snapshot;
    const { dialect, hand, units } = settings;
    const page = location.href.replace(/[?#].*$/, '');
    const linkTo = async (tab: LinkTab): Promise<string> =>
      page + (await writeLink({ project, place, answered, dialect, hand, units, tab }));
    const links = { edge: await linkTo('edge'), wrong: await linkTo('wrong') };
    if (asked !== snapshot) return;
    packed = { of: snapshot, links };
    onChange();
  };
  return (snapshot) => {
    if (asked !== snapshot) {
      asked = snapshot;
      void pack(snapshot);
    }
    return packed?.of === snapshot ? packed.links : null;
  };
}

/** Addresses of a panel. Packing takes a moment: they come with a later rendering. */
import { type Shared, writeLink } from '../input/link.ts';
import type { Project, Snapshot, Tab } from '../state/snapshot.ts';

/** What is sent of a snapshot. @param project another than the one at hand */
export function sharedOf(snapshot: Snapshot, tab: Tab, project: Project = snapshot.project): Shared {
  const { place, answered, settings } = snapshot;
  const { dialect, hand, units } = settings;
  return { project, place, answered, dialect, hand, units, tab };
}

export type Packer = (of: object, make: () => Shared) => string | null;

/** The address of what is made `of` something: null until it is packed, and packed anew when that is another. */
export function openPacker(onChange: () => void): Packer {
  let packed: { of: object; link: string } | null = null;
  let asked: object | null = null;
  const pack = async (of: object, shared: Shared): Promise<void> => {
    const link = location.href.replace(/[?#].*$/, '') + (await writeLink(shared));
    if (asked !== of) return;
    packed = { of, link };
    onChange();
  };
  return (of, make) => {
    if (asked !== of) {
      asked = of;
      void pack(of, make());
    }
    return packed?.of === of ? packed.link : null;
  };
}

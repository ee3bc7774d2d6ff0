import type { Explained } from '../../core/index.ts';
import type { Send, Snapshot } from '../state/snapshot.ts';
import type { Choose, Chosen } from './chosen.ts';

/** What every part of the place is drawn from. */
export type View = { snapshot: Snapshot; send: Send; chosen: Chosen; choose: Choose };

/** The same once there is an answer. `cause`: key of the explanation that is told; none where a cure is right whatever it was. */
export type Answered = View & { explained: Explained; cause?: string };

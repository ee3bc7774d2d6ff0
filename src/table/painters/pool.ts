/**
 * Containers of particles, used again and again: a container that is destroyed leaves its index buffer on the
 * GPU, and a used one has its buffers ready.
 */
import { ParticleContainer } from 'pixi.js';

export type Pool = {
  /** An empty container in which nothing changes between two fillings. */
  take(): ParticleContainer;
  /** Takes a container back, out of the drawing. */
  give(container: ParticleContainer): void;
  destroy(): void;
};

export function openPool(): Pool {
  const free: ParticleContainer[] = [];
  return {
    take: () => free.pop() ?? makeStill(),
    give(container) {
      container.removeFromParent();
      container.particleChildren = [];
      container.update();
      free.push(container);
    },
    destroy() {
      for (const container of free) container.destroy();
      free.length = 0;
    },
  };
}

/** Every property is still: a change sends the whole container anew, a frame without change sends nothing. */
function makeStill(): ParticleContainer {
  return new ParticleContainer({
    dynamicProperties: { position: false, rotation: false, vertex: false, uvs: false, color: false },
  });
}

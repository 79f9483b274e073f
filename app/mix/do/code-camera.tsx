'use client';

import { type ComponentType, useState } from 'react';
import type { CameraScan } from '@/app/_parts/camera-scan';

/** The camera for codes. Nobody who types pays for it, and whoever begins a mix has it before the network can go. */
const loadCamera = async () => {
  const [{ CameraScan }, { readyForPictures }] = await Promise.all([
    import('@/app/_parts/camera-scan'),
    import('@/app/_parts/read-picture'),
  ]);
  await readyForPictures();
  return CameraScan;
};

/** Have the camera at hand. Without a network it is tried again when somebody asks for it. */
export const readyForCodes = (): void => void loadCamera().catch(() => null);

type Camera = ComponentType<Parameters<typeof CameraScan>[0]>;

/** The camera or a photo, for whoever does not want to type a code. */
export function CodeCamera({ onCode }: { onCode: (code: string) => void }) {
  const [Camera, setCamera] = useState<Camera | null>(null);
  const [told, setTold] = useState('');
  const open = () =>
    loadCamera().then(
      (loaded) => setCamera(() => loaded),
      () => setTold('The camera could not be loaded without a network. Type the code.'),
    );
  const found = (code: string) => {
    setCamera(null);
    onCode(code);
  };
  return (
    <>
      {Camera && <Camera onCode={found} isAtOnce />}
      <button type="button" aria-expanded={Camera !== null} onClick={Camera ? () => setCamera(null) : open}>
        {Camera ? 'Without the camera' : 'With the camera or a photo'}
      </button>
      {told && <p role="status">{told}</p>}
    </>
  );
}

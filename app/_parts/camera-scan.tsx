'use client';

import { type ChangeEvent, useEffect, useState } from 'react';
import { unreadable } from '@/shared/outcome';
import styles from './camera.module.css';
import { CameraView } from './camera-view';
import { readPhoto } from './read-picture';

type CameraScanProps = {
  onCode: (code: string) => void;
  /** Whether the camera runs as soon as this is shown: somebody asked for it already. */
  isAtOnce?: boolean;
};

/**
 * Reads codes with what this browser allows: the camera as it runs, where the page came safely, or else a photo that is
 * taken and read on the spot. Pictures stay in the browser. What a code stands for is for whoever asked to say.
 */
export function CameraScan({ onCode, isAtOnce = false }: CameraScanProps) {
  const [can, setCan] = useState<'nothing yet' | 'photo' | 'camera'>('nothing yet');
  const [isOn, setIsOn] = useState(false);
  const [told, setTold] = useState('');
  useEffect(() => {
    const may = mayUseCamera();
    setCan(may ? 'camera' : 'photo');
    setIsOn(may && isAtOnce);
  }, [isAtOnce]);
  if (can === 'nothing yet') return null;

  const photo = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    event.target.value = '';
    if (!file) return;
    setTold('Reading the picture …');
    const code = await readPhoto(file).catch(() => unreadable(NOT_LOADED));
    if (code.ok) found(code.value);
    else setTold(code.message);
  };
  const found = (code: string) => {
    stop('');
    onCode(code);
  };
  const stop = (why: string) => {
    setIsOn(false);
    setTold(why);
  };
  return (
    <section className={styles.camera} aria-label="With the camera">
      {isOn && <CameraView onCode={found} onStop={stop} />}
      <div className={styles.ways}>
        {can === 'camera' && !isOn && (
          <button type="button" data-main="" onClick={() => setIsOn(true)}>
            Use the camera
          </button>
        )}
        {isOn && (
          <button type="button" onClick={() => stop('')}>
            Stop
          </button>
        )}
        <label className={`button ${styles.photo}`}>
          Take or choose a photo
          <input type="file" accept="image/*" capture="environment" onChange={photo} />
        </label>
      </div>
      <p role="status">{told}</p>
      {can === 'photo' && (
        <p className="soft">
          A camera that runs works only on this computer itself or over https. A photo works everywhere.
        </p>
      )}
    </section>
  );
}

const NOT_LOADED = 'What reads pictures could not be loaded without a network. Type the code.';

const mayUseCamera = (): boolean => window.isSecureContext && navigator.mediaDevices?.getUserMedia !== undefined;

'use client';

import { type ChangeEvent, useEffect, useState } from 'react';
import { CameraView } from './camera-view';
import { readPhoto } from './read-picture';
import styles from './scan.module.css';

/** Opens what a code stands for. What it stands for is the server's to say, so that typing and scanning agree. */
const open = (code: string): void => location.assign(`/shelf/scan?${new URLSearchParams({ code })}`);

/**
 * Reads codes with what this browser allows: the camera as it runs, where the page came safely, or else a photo that is
 * taken and read on the spot. Pictures stay in the browser.
 */
export function CameraScan() {
  const [can, setCan] = useState<'nothing yet' | 'photo' | 'camera'>('nothing yet');
  const [isOn, setIsOn] = useState(false);
  const [told, setTold] = useState('');
  useEffect(() => setCan(mayUseCamera() ? 'camera' : 'photo'), []);
  if (can === 'nothing yet') return null;

  const photo = async (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.target.files?.[0];
    event.target.value = '';
    if (!file) return;
    setTold('Reading the picture …');
    const code = await readPhoto(file);
    if (code.ok) open(code.value);
    else setTold(code.message);
  };
  const stop = (why: string) => {
    setIsOn(false);
    setTold(why);
  };
  return (
    <section className={styles.camera} aria-label="With the camera">
      {isOn && <CameraView onCode={open} onStop={stop} />}
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

const mayUseCamera = (): boolean => window.isSecureContext && navigator.mediaDevices?.getUserMedia !== undefined;

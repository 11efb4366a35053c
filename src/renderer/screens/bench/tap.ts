import type { Settings } from '../../../core/contract/hostApi.ts';

let sound: AudioContext | null = null;

/** A soft wooden tap: one for a turn, two for a move of the edge, a low one for a turn taken back. */
export function tap(kind: 'turn' | 'move' | 'back'): void {
  sound ??= new AudioContext();
  const at = sound.currentTime;
  const pitch = kind === 'back' ? 240 : 620;
  knock(sound, at, pitch);
  if (kind === 'move') knock(sound, at + 0.16, pitch * 1.2);
}

function knock(context: AudioContext, at: number, pitch: number): void {
  const tone = context.createOscillator();
  const loudness = context.createGain();
  tone.type = 'triangle';
  tone.frequency.setValueAtTime(pitch, at);
  tone.frequency.exponentialRampToValueAtTime(pitch * 0.6, at + 0.05);
  loudness.gain.setValueAtTime(0.25, at);
  loudness.gain.exponentialRampToValueAtTime(0.001, at + 0.09);
  tone.connect(loudness).connect(context.destination);
  tone.start(at);
  tone.stop(at + 0.1);
}

/** Says the next step aloud, in the language on screen; what was being said is cut short. */
export function speakStep(sentence: string, language: Settings['language']): void {
  if (!('speechSynthesis' in window)) return;
  speechSynthesis.cancel();
  const said = new SpeechSynthesisUtterance(sentence);
  said.lang = language;
  speechSynthesis.speak(said);
}

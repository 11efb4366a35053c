import { expect, test } from 'vitest';
import { chooseLanguage } from '../../src/core/words/chooseLanguage.ts';
import { wishedLanguages } from '../../src/main/local/wishedLanguages.ts';

test('a first start speaks the first wished language there are words in', () => {
  expect(chooseLanguage(['de-DE', 'en-US'])).toBe('de');
  expect(chooseLanguage(['en-GB', 'de'])).toBe('en');
  expect(chooseLanguage(['fr-FR', 'fr', 'de-AT', 'en'])).toBe('de');
  expect(chooseLanguage(['DE_ch'])).toBe('de');
});

test('English where there are words in none of them, or nothing is wished', () => {
  expect(chooseLanguage([])).toBe('en');
  expect(chooseLanguage(['', '*', 'fr', 'C'])).toBe('en');
  // Lower Sorbian begins like German does: it is another language.
  expect(chooseLanguage(['dsb', 'den'])).toBe('en');
});

test('a browser’s wishes come the dearest first, and what it refuses is left out', () => {
  expect(wishedLanguages('de-AT,de;q=0.9,en;q=0.5')).toEqual(['de-AT', 'de', 'en']);
  expect(wishedLanguages('en;q=0.4, de ; q=0.8 , fr;q=0')).toEqual(['de', 'en']);
  expect(wishedLanguages('')).toEqual([]);
  expect(wishedLanguages('de;q=x,;;,en')).toEqual(['en']);
});

import { useState } from 'react';
import './troubleReport.css';
import { host } from '../host/currentHost.ts';
import { useWords } from '../words/useWords.ts';
import { QuietButton } from './Actions.tsx';

/** What a maintainer needs to know, shown before it is copied: nobody sends what they haven't seen. */
export function TroubleReport() {
  const words = useWords().shell.trouble;
  const [text, setText] = useState<string | null>(null);
  const [said, setSaid] = useState<string | null>(null);
  const show = async () => {
    const answer = await host().call('troubleReport', {});
    if (answer.ok) setText(answer.value.result.text);
    else setSaid(`${answer.problem.sentence} ${answer.problem.remedy}`);
  };
  const copy = () => {
    if (text === null) return;
    navigator.clipboard.writeText(text).then(
      () => setSaid(words.copied),
      () => setSaid(words.notCopied),
    );
  };
  return (
    <div className="trouble-report">
      <p className="second">{words.lead}</p>
      {text === null ? (
        <QuietButton onPress={() => void show()}>{words.show}</QuietButton>
      ) : (
        <>
          <textarea readOnly rows={8} aria-label={words.label} value={text} />
          <QuietButton onPress={copy}>{words.copy}</QuietButton>
        </>
      )}
      {said !== null && <p role="status">{said}</p>}
    </div>
  );
}

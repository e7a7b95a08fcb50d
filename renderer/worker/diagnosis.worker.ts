import { makeAnswerer } from './answerQuestion.ts';
import type { DiagnosisQuestion, DiagnosisReply } from './protocol.ts';
import { rehearsing } from './rehearse.ts';

const answer = makeAnswerer({ clock: () => performance.now(), later: (task) => setTimeout(task), rehearsal: rehearsing() });
const reply = (message: DiagnosisReply) => self.postMessage(message);

self.addEventListener('message', (event: MessageEvent<DiagnosisQuestion>) => answer(event.data, reply));
reply({ kind: 'ready' });

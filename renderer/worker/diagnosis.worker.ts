import { makeAnswerer } from './answerQuestion.ts';
import type { DiagnosisQuestion, DiagnosisReply } from './protocol.ts';

const answer = makeAnswerer(() => performance.now());
const reply = (message: DiagnosisReply) => self.postMessage(message);

self.addEventListener('message', (event: MessageEvent<DiagnosisQuestion>) => answer(event.data, reply));
reply({ kind: 'ready' });

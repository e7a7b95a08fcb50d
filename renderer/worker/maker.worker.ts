import type { MakerQuestion } from '../practice/makerProtocol.ts';
import { answerMaker } from './answerMaker.ts';

self.addEventListener('message', ({ data }: MessageEvent<MakerQuestion>) => void answerMaker(data, (message) => self.postMessage(message)));

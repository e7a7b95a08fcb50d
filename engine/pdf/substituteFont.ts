/// <reference path="./libraries.d.ts" />
import sans from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?inline';

export const substituteFont: string = sans;

/**
 * The domain text as an answer-set program, for a general solver. It was written from the text alone (what stands in a cabinet, what
 * can break, how a unit behaves, the steps of the simulation), never from engine code, so that a slip in one of the two shows.
 *
 * Input atoms (made by facts.ts from a cabinet file, whatever the engine thinks of it):
 *   supply(S). chainUnit(U). offUnit(U). beh(U,Parameter,Value).
 *   chain(C). portMute(C). portIdleLight(C). controllerPowered.
 *   fromPort(L,C). fromUnit(L,U). toUnit(L,U).      link L: where its upper and its lower plug sit
 *   lead(D,From,To). feedback(F,U). plugged(F).
 *   moment(M). firstTrip(M). snapshot(S,Trip,Now). onset(S,O). halted(S). notHalted(S).
 * A fault is fault(it(Kind,Ref,Part),Mode,Presence); Part is a plug's end or a fibre's direction, else "".
 */

/** Steps 1 to 7 of the simulation, for every moment and snapshot. */
export const simulationProgram = `
% --- order along each chain, from the links alone -------------------------------------------------------------------------
at(C,1,U)   :- fromPort(L,C), toUnit(L,U).
at(C,P+1,V) :- at(C,P,U), fromUnit(L,U), toUnit(L,V).
link(C,1,L)   :- fromPort(L,C), toUnit(L,_).
link(C,P+1,L) :- at(C,P,U), fromUnit(L,U), toUnit(L,_).
len(C,N) :- chain(C), N = #max { 0; P : at(C,P,_) }.
unit(U) :- chainUnit(U).
unit(U) :- offUnit(U).

% --- which faults are active at a moment ----------------------------------------------------------------------------------
active(I,M,W) :- fault(I,M,"steady"), moment(W).
active(I,M,W) :- fault(I,M,"intermittent"), moment(W), not absent(I,W).

% --- step 1: control power -------------------------------------------------------------------------------------------------
gives(S,W) :- supply(S), moment(W), not active(it("supply",S,""),"dead",W), not active(it("supply",S,""),"output-lost",W).
gives(U,W) :- lead(D,A,U), gives(A,W), unit(U), not active(it("lead",D,""),"open",W).
powered(U,W) :- unit(U), gives(U,W).
powered(U,W) :- unit(U), moment(W), not someLead.
someLead :- lead(_,_,_).

% --- step 2: alive ---------------------------------------------------------------------------------------------------------
short(U,W) :- feedback(F,U), plugged(F), active(it("feedback",F,""),"short",W).
silenced(U,W) :- short(U,W), not beh(U,"shortEffect","code-linked").
silenced(U,W) :- active(it("fuse",U,""),"open",W).
silenced(U,W) :- active(it("place",U,""),"contact-bad",W).
silenced(U,W) :- active(it("board",U,""),"dead-dark",W).
silenced(U,W) :- active(it("board",U,""),"dead-lit",W).
alive(U,W) :- powered(U,W), not silenced(U,W).
portDead(C,W) :- active(it("controller-port",C,""),"dead",W).
portDead(C,W) :- active(it("controller","",""),"all-ports-dead",W), chain(C).
aliveAt(C,0,W) :- chain(C), moment(W), controllerPowered, not portDead(C,W).
aliveAt(C,P,W) :- at(C,P,U), alive(U,W).

% --- step 3: raw hearing ---------------------------------------------------------------------------------------------------
noTx(C,P,"down",W) :- at(C,P,U), active(it("board",U,""),"down-tx",W).
noTx(C,P,"down",W) :- at(C,P,U), active(it("board",U,""),"down-port",W).
noTx(C,P,"up",W)   :- at(C,P,U), active(it("board",U,""),"up-tx",W).
noTx(C,P,"up",W)   :- at(C,P,U), active(it("board",U,""),"up-port",W).
noRx(C,P,"down",W) :- at(C,P,U), active(it("board",U,""),"down-rx",W).
noRx(C,P,"down",W) :- at(C,P,U), active(it("board",U,""),"down-port",W).
noRx(C,P,"up",W)   :- at(C,P,U), active(it("board",U,""),"up-rx",W).
noRx(C,P,"up",W)   :- at(C,P,U), active(it("board",U,""),"up-port",W).
crossedAt(C,P,W)   :- at(C,P,U), active(it("wiring",U,""),"crossed",W).
direction("outbound"). direction("return").
blocked(L,D,W) :- link(_,_,L), direction(D), active(it("cable",L,""),"cut",W).
blocked(L,D,W) :- link(_,_,L), direction(D), active(it("cable",L,""),"fibres-crossed",W).
blocked(L,D,W) :- link(_,_,L), direction(D), active(it("fibre",L,D),_,W).
blocked(L,D,W) :- link(_,_,L), direction(D), active(it("plug",L,_),_,W).
blocked(L,D,W) :- link(_,_,L), direction(D), active(it("route",L,""),"kinked",W).
bothEnds(C,I,W) :- link(C,I,_), aliveAt(C,I-1,W), aliveAt(C,I,W), not crossedAt(C,I-1,W), not crossedAt(C,I,W).
outRaw(C,I,W) :- bothEnds(C,I,W), link(C,I,L), not noTx(C,I-1,"down",W), not blocked(L,"outbound",W), not noRx(C,I,"up",W).
retRaw(C,I,W) :- bothEnds(C,I,W), link(C,I,L), not noTx(C,I,"up",W), not blocked(L,"return",W), not noRx(C,I-1,"down",W).

% --- step 4: an end that hears nothing on a link and is mute sends nothing on it ---------------------------------------------
mute(C,0) :- portMute(C).
mute(C,P) :- at(C,P,U), beh(U,"onReceiveLoss","mute").
deafUp(C,I,W)   :- link(C,I,_), moment(W), not outRaw(C,I,W).
deafDown(C,I,W) :- link(C,I,_), moment(W), not retRaw(C,I,W).
deafDown(C,I,W) :- deafUp(C,I,W), mute(C,I).
deafUp(C,I,W)   :- deafDown(C,I,W), mute(C,I-1).

% --- step 5: losses of an alive unit -----------------------------------------------------------------------------------------
brokenUp(C,P,W)   :- deafUp(C,P,W).
brokenUp(C,P,W)   :- brokenUp(C,P-1,W), at(C,P,_).
brokenDown(C,P,W) :- at(C,P,_), deafDown(C,P+1,W).
brokenDown(C,P,W) :- at(C,P,_), brokenDown(C,P+1,W).
lost(U,"upstream",W)   :- at(C,P,U), alive(U,W), beh(U,"lossScope","neighbour"), deafUp(C,P,W).
lost(U,"downstream",W) :- at(C,P,U), alive(U,W), beh(U,"lossScope","neighbour"), deafDown(C,P+1,W).
lost(U,"upstream",W)   :- at(C,P,U), alive(U,W), beh(U,"lossScope","chain"), brokenUp(C,P,W).
lost(U,"downstream",W) :- at(C,P,U), alive(U,W), beh(U,"lossScope","chain"), brokenDown(C,P,W).

% --- step 6: what a display shows now ------------------------------------------------------------------------------------------
linkUpUnit(U) :- beh(U,"complainsFrom","link-up").
restarted(S,U) :- snapshot(S,T,N), chainUnit(U), not alive(U,T), alive(U,N).
saysNothing(S,U) :- onset(S,"at-power-up"), linkUpUnit(U).
saysNothing(S,U) :- restarted(S,U), linkUpUnit(U).
says(S,U,D) :- snapshot(S,_,N), lost(U,D,N), not saysNothing(S,U).
says(S,U,D) :- snapshot(S,T,_), lost(U,D,T), beh(U,"holds","until-reset"), not saysNothing(S,U).
isDark(S,U) :- snapshot(S,_,N), unit(U), not powered(U,N).
isDark(S,U) :- snapshot(S,_,N), unit(U), active(it("fuse",U,""),"open",N).
isDark(S,U) :- snapshot(S,_,N), unit(U), active(it("place",U,""),"contact-bad",N).
isDark(S,U) :- snapshot(S,_,N), unit(U), active(it("board",U,""),"dead-dark",N).
isDark(S,U) :- snapshot(S,_,N), unit(U), short(U,N), beh(U,"shortEffect","dark").
isOther(S,U) :- snapshot(S,_,N), chainUnit(U), short(U,N), not isDark(S,U).
isQuiet(S,U) :- snapshot(S,_,N), active(it("board",U,""),"dead-lit",N), not isDark(S,U), not isOther(S,U).
settled(S,U) :- isDark(S,U).
settled(S,U) :- isOther(S,U).
settled(S,U) :- isQuiet(S,U).
both(S,U) :- says(S,U,"upstream"), says(S,U,"downstream").
shows(S,U,"dark")            :- isDark(S,U).
shows(S,U,"other")           :- isOther(S,U).
shows(S,U,"quiet")           :- isQuiet(S,U).
shows(S,U,"both-losses")     :- chainUnit(U), both(S,U), not settled(S,U), beh(U,"whenBoth","both").
shows(S,U,"upstream-loss")   :- chainUnit(U), both(S,U), not settled(S,U), beh(U,"whenBoth","upstream").
shows(S,U,"downstream-loss") :- chainUnit(U), both(S,U), not settled(S,U), beh(U,"whenBoth","downstream").
shows(S,U,"upstream-loss")   :- chainUnit(U), says(S,U,"upstream"), not both(S,U), not settled(S,U).
shows(S,U,"downstream-loss") :- chainUnit(U), says(S,U,"downstream"), not both(S,U), not settled(S,U).
shows(S,U,"quiet") :- snapshot(S,_,_), chainUnit(U), not says(S,U,"upstream"), not says(S,U,"downstream"), not settled(S,U).
shows(S,U,"quiet") :- snapshot(S,_,_), offUnit(U), not isDark(S,U).
shows(S,U,"dark")  :- snapshot(S,_,N), supply(U), active(it("supply",U,""),"dead",N).
shows(S,U,"quiet") :- snapshot(S,_,N), supply(U), not active(it("supply",U,""),"dead",N).

% --- step 7: the report, from the trip ------------------------------------------------------------------------------------------
gapAt(C,I,W) :- deafUp(C,I,W).
gapAt(C,I,W) :- deafDown(C,I,W).
reports(S,C,K)      :- snapshot(S,T,_), chain(C), K = #min { I : gapAt(C,I,T) }, gapAt(C,K,T).
reports(S,C,"none") :- snapshot(S,T,_), chain(C), not gapAt(C,_,T).
brokenAtTrip(S) :- snapshot(S,T,_), gapAt(_,_,T).
`;

/** Step 8 of the simulation and the other looks, from the faults that are there now. */
export const lookProgram = `
% The port in which a plug really sits; with the two plugs of a unit exchanged it is the other one.
sits(C,I,"lower",I,"up",W)     :- link(C,I,_), moment(W), not crossedAt(C,I,W).
sits(C,I,"lower",I,"down",W)   :- link(C,I,_), crossedAt(C,I,W).
sits(C,I,"upper",I-1,"down",W) :- link(C,I,_), moment(W), not crossedAt(C,I-1,W).
sits(C,I,"upper",I-1,"up",W)   :- link(C,I,_), crossedAt(C,I-1,W).
% Both ends of an unplugged link are deaf: a mute one sends no telegrams, and then gives light only if idle ports do.
shines(C,P) :- at(C,P,U), not mute(C,P).
shines(C,P) :- at(C,P,U), beh(U,"idleLight","yes").
shines(C,0) :- chain(C), not mute(C,0).
shines(C,0) :- chain(C), portIdleLight(C).
gives(C,I,E,W) :- sits(C,I,E,P,D,W), aliveAt(C,P,W), not noTx(C,P,D,W), shines(C,P).
towards("lower","outbound"). towards("upper","return").
other("lower","upper"). other("upper","lower").
arrives(C,I,E,W) :- link(C,I,L), other(E,F), towards(E,D), gives(C,I,F,W),
  not active(it("cable",L,""),"cut",W), not active(it("fibre",L,D),"cut",W), not active(it("plug",L,F),"loose",W).
weakened(L,D,W) :- active(it("fibre",L,D),"dim",W).
weakened(L,D,W) :- direction(D), active(it("route",L,""),"kinked",W).
weakened(L,D,W) :- direction(D), active(it("plug",L,_),"fouled",W).
wrongHole(L,W)  :- active(it("cable",L,""),"fibres-crossed",W).
sees("light-at-plug",L,E,"none",W)       :- link(C,I,L), moment(W), other(E,_), not arrives(C,I,E,W).
sees("light-at-plug",L,E,"wrong-hole",W) :- link(C,I,L), arrives(C,I,E,W), wrongHole(L,W).
sees("light-at-plug",L,E,"weak",W)       :- link(C,I,L), arrives(C,I,E,W), not wrongHole(L,W), towards(E,D), weakened(L,D,W).
sees("light-at-plug",L,E,"bright",W)     :- link(C,I,L), arrives(C,I,E,W), not wrongHole(L,W), towards(E,D), not weakened(L,D,W).
sees("light-at-port",L,E,"bright",W)     :- link(C,I,L), gives(C,I,E,W).
sees("light-at-port",L,E,"none",W)       :- link(C,I,L), moment(W), other(E,_), not gives(C,I,E,W).
broken(L,D,W)  :- direction(D), active(it("cable",L,""),"cut",W).
broken(L,D,W)  :- active(it("fibre",L,D),"cut",W).
dull(L,D,W)    :- active(it("fibre",L,D),"dim",W).
dull(L,D,W)    :- direction(D), active(it("plug",L,_),"fouled",W).
sees("lamp",L,D,"none",W)  :- link(_,_,L), direction(D), broken(L,D,W).
sees("lamp",L,D,"weak",W)  :- link(_,_,L), dull(L,D,W), not broken(L,D,W).
sees("lamp",L,D,"clear",W) :- link(_,_,L), direction(D), moment(W), not broken(L,D,W), not dull(L,D,W).
sees("voltage",U,"","steady",W) :- powered(U,W).
sees("voltage",U,"","absent",W) :- unit(U), moment(W), not powered(U,W).
sees("compare-plugs",U,"","differs",W) :- at(_,_,U), active(it("wiring",U,""),"crossed",W).
sees("compare-plugs",U,"","same",W)    :- at(_,_,U), moment(W), not active(it("wiring",U,""),"crossed",W).
sees("compare-fibres",L,"","differs",W) :- link(_,_,L), wrongHole(L,W).
sees("compare-fibres",L,"","same",W)    :- link(_,_,L), moment(W), not wrongHole(L,W).
`;

/** Which faults may be, singly and in pairs, and how an intermittent one may come and go. */
export const hypothesisProgram = `
may(it("cable",L,""),"cut";it("cable",L,""),"fibres-crossed") :- link(_,_,L).
may(it("fibre",L,D),"cut";it("fibre",L,D),"dim") :- link(_,_,L), direction(D).
may(it("plug",L,"upper"),"loose";it("plug",L,"upper"),"fouled") :- link(_,_,L).
may(it("plug",L,"lower"),"loose";it("plug",L,"lower"),"fouled") :- link(_,_,L).
may(it("route",L,""),"kinked") :- link(_,_,L).
may(it("board",U,""),"dead-dark";it("board",U,""),"dead-lit") :- at(_,_,U).
may(it("board",U,""),"up-rx";it("board",U,""),"up-tx";it("board",U,""),"up-port") :- at(_,_,U).
may(it("board",U,""),"down-rx";it("board",U,""),"down-tx";it("board",U,""),"down-port") :- at(C,P,U), len(C,N), P < N.
may(it("fuse",U,""),"open") :- unit(U).
may(it("place",U,""),"contact-bad") :- unit(U).
may(it("wiring",U,""),"crossed") :- at(_,_,U).
may(it("controller-port",C,""),"dead") :- chain(C), len(C,N), N > 0.
may(it("controller","",""),"all-ports-dead") :- link(_,_,_).
may(it("lead",D,""),"open") :- lead(D,_,_).
may(it("supply",S,""),"output-lost";it("supply",S,""),"dead") :- supply(S).
may(it("feedback",F,""),"short") :- plugged(F).

atPowerUpOnly("crossed"). atPowerUpOnly("fibres-crossed").
steadyOnly("crossed"). steadyOnly("fibres-crossed").
ran :- onset(_,"while-running").
mayBe(I,M,"steady") :- may(I,M), not atPowerUpOnly(M).
mayBe(I,M,"steady") :- may(I,M), atPowerUpOnly(M), not ran.
mayBe(I,M,"intermittent") :- may(I,M), not steadyOnly(M), not fuse(I).
fuse(it("fuse",U,"")) :- unit(U).

{ fault(I,M,P) : mayBe(I,M,P) } 2.
:- fault(I,M,P), fault(I,M2,P2), (M,P) < (M2,P2).
:- fault(it("cable",L,""),_,_), fault(it("fibre",L,_),_,_).

% Present at the first trip; at any later moment there or not, each time anew.
{ absent(I,W) : moment(W), not firstTrip(W) } :- fault(I,_,"intermittent").

% A halted snapshot had a broken chain at its trip; one that is not halted had none.
:- halted(S), not brokenAtTrip(S).
:- notHalted(S), brokenAtTrip(S).

% What was seen: a set of meanings, a set of gaps. Some other code (with or without more) goes with whatever is lit.
fits(S,U,M) :- seenMeaning(S,U,M).
fits(S,U,M) :- seenMeaning(S,U,"other"), shows(S,U,M), M != "dark".
:- seen(S,U), shows(S,U,M), not fits(S,U,M).
:- read(S,C), reports(S,C,K), not readGap(S,C,K).

#show.
#show fault/3.
`;

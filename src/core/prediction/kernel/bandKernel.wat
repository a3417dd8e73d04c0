;; The innermost loops of a prediction, two bands at a time. Every function is the twin of plain code in core/prediction
;; (wettableGarment, printedReflectance, coarsePrint, responseSurface), which tests hold it equal to; constants of the model
;; arrive as arguments. A spectrum is `bytes` long, 8 for each of its bands, an even number of them; several spectra that are
;; always read together lie pair of bands by pair of bands. Cloth is passed on as u = 1 / R, so that no division is made
;; twice: u = 1 + q + sqrt(q (q + 2)) with q = factor K/S (Kubelka & Munk 1931). Written out where it is needed, because
;; engines do not inline calls.
(module
  (memory (export "memory") 32)

  ;; One dyed fibre of a heather: adds mass (u - 1) / (m + floor u), its blend value (Stearns & Noechel 1944), to the
  ;; number at `sum`; floor = 0.01 (1 - m). With `fresh` the sum starts from `start` in every band.
  (func (export "addFibre")
    (param $ks i32) (param $sum i32) (param $factor f64) (param $mass f64)
    (param $m f64) (param $floor f64) (param $fresh i32) (param $start f64) (param $bytes i32)
    (local $end i32) (local $by v128) (local $q v128) (local $u v128) (local $before v128)
    (local.set $by (f64x2.splat (local.get $factor)))
    (local.set $before (f64x2.splat (local.get $start)))
    (local.set $end (i32.add (local.get $ks) (local.get $bytes)))
    (loop $bands
      (local.set $q (f64x2.mul (local.get $by) (v128.load (local.get $ks))))
      (local.set $u
        (f64x2.add (f64x2.add (f64x2.splat (f64.const 1)) (local.get $q))
          (f64x2.sqrt (f64x2.mul (local.get $q) (f64x2.add (local.get $q) (f64x2.splat (f64.const 2)))))))
      (if (i32.eqz (local.get $fresh)) (then (local.set $before (v128.load (local.get $sum)))))
      (v128.store (local.get $sum)
        (f64x2.add (local.get $before)
          (f64x2.div
            (f64x2.mul (f64x2.splat (local.get $mass))
              (f64x2.sub (local.get $u) (f64x2.splat (f64.const 1))))
            (f64x2.add (f64x2.splat (local.get $m))
              (f64x2.mul (f64x2.splat (local.get $floor)) (local.get $u))))))
      (local.set $sum (i32.add (local.get $sum) (i32.const 16)))
      (br_if $bands
        (i32.lt_u
          (local.tee $ks (i32.add (local.get $ks) (i32.const 16)))
          (local.get $end)))))

  ;; The blend's u = (1 + f m) / (1 - floor f) of the summed blend values f at `sum`, written over them.
  (func (export "remix") (param $sum i32) (param $m f64) (param $floor f64) (param $bytes i32)
    (local $end i32) (local $f v128)
    (local.set $end (i32.add (local.get $sum) (local.get $bytes)))
    (loop $bands
      (local.set $f (v128.load (local.get $sum)))
      (v128.store (local.get $sum)
        (f64x2.div
          (f64x2.add (f64x2.splat (f64.const 1))
            (f64x2.mul (local.get $f) (f64x2.splat (local.get $m))))
          (f64x2.sub (f64x2.splat (f64.const 1))
            (f64x2.mul (local.get $f) (f64x2.splat (local.get $floor))))))
      (br_if $bands
        (i32.lt_u
          (local.tee $sum (i32.add (local.get $sum) (i32.const 16)))
          (local.get $end)))))

  ;; What is seen of a film (T^2 and R0, at `film`) over cloth of u at `cloth`, summed with the weights x, y, z at
  ;; `weights` into three numbers, 256 bytes apart from `out` on. With m = u - R0 and n = R0 m + T^2 the film over the cloth is n / m and under
  ;; its surface, open and closed parts together, n (both m - inside n) / (m (m - k2 n)), where both = open + leaving and
  ;; inside = k2 open (Kubelka 1948; Saunderson 1942). With `ks` other than 0 evenly dyed
  ;; cloth of that K/S times `factor` is wetted on the way, its u left at `cloth`.
  (func $seenOver (export "seenOver")
    (param $ks i32) (param $factor f64) (param $cloth i32) (param $film i32) (param $weights i32) (param $out i32)
    (param $both f64) (param $inside f64) (param $k2 f64)
    (local $end i32) (local $q v128) (local $u v128) (local $own v128) (local $m v128) (local $n v128)
    (local $seen v128)
    (local $x v128) (local $y v128) (local $z v128)
    (local.set $end (i32.add (local.get $cloth) (i32.const 288)))
    (loop $bands
      (if (local.get $ks)
        (then
          (local.set $q (f64x2.mul (f64x2.splat (local.get $factor)) (v128.load (local.get $ks))))
          (local.set $u
            (f64x2.add (f64x2.add (f64x2.splat (f64.const 1)) (local.get $q))
              (f64x2.sqrt
                (f64x2.mul (local.get $q) (f64x2.add (local.get $q) (f64x2.splat (f64.const 2)))))))
          (v128.store (local.get $cloth) (local.get $u))
          (local.set $ks (i32.add (local.get $ks) (i32.const 16))))
        (else (local.set $u (v128.load (local.get $cloth)))))
      (local.set $own (v128.load offset=288 (local.get $film)))
      (local.set $m (f64x2.sub (local.get $u) (local.get $own)))
      (local.set $n
        (f64x2.add (f64x2.mul (local.get $own) (local.get $m)) (v128.load (local.get $film))))
      (local.set $seen
        (f64x2.div
          (f64x2.mul (local.get $n)
            (f64x2.sub
              (f64x2.mul (f64x2.splat (local.get $both)) (local.get $m))
              (f64x2.mul (f64x2.splat (local.get $inside)) (local.get $n))))
          (f64x2.mul (local.get $m)
            (f64x2.sub (local.get $m) (f64x2.mul (f64x2.splat (local.get $k2)) (local.get $n))))))
      (local.set $x
        (f64x2.add (local.get $x) (f64x2.mul (local.get $seen) (v128.load (local.get $weights)))))
      (local.set $y
        (f64x2.add (local.get $y)
          (f64x2.mul (local.get $seen) (v128.load offset=288 (local.get $weights)))))
      (local.set $z
        (f64x2.add (local.get $z)
          (f64x2.mul (local.get $seen) (v128.load offset=576 (local.get $weights)))))
      (local.set $film (i32.add (local.get $film) (i32.const 16)))
      (local.set $weights (i32.add (local.get $weights) (i32.const 16)))
      (br_if $bands
        (i32.lt_u
          (local.tee $cloth (i32.add (local.get $cloth) (i32.const 16)))
          (local.get $end))))
    (f64.store (local.get $out)
      (f64.add (f64x2.extract_lane 0 (local.get $x)) (f64x2.extract_lane 1 (local.get $x))))
    (f64.store offset=256 (local.get $out)
      (f64.add (f64x2.extract_lane 0 (local.get $y)) (f64x2.extract_lane 1 (local.get $y))))
    (f64.store offset=512 (local.get $out)
      (f64.add (f64x2.extract_lane 0 (local.get $z)) (f64x2.extract_lane 1 (local.get $z)))))

  ;; The same of a few groups of bands, `bytes` of them: film and weights pair by pair beside each other. A kernel function of
  ;; its own, since the one above with a length and this layout took a tenth more.
  (func $seenGroups
    (param $ks i32) (param $factor f64) (param $cloth i32) (param $film i32) (param $weights i32) (param $out i32)
    (param $both f64) (param $inside f64) (param $k2 f64) (param $bytes i32)
    (local $end i32) (local $q v128) (local $u v128) (local $own v128) (local $m v128) (local $n v128)
    (local $seen v128)
    (local $x v128) (local $y v128) (local $z v128)
    (local.set $end (i32.add (local.get $cloth) (local.get $bytes)))
    (loop $bands
      (if (local.get $ks)
        (then
          (local.set $q (f64x2.mul (f64x2.splat (local.get $factor)) (v128.load (local.get $ks))))
          (local.set $u
            (f64x2.add (f64x2.add (f64x2.splat (f64.const 1)) (local.get $q))
              (f64x2.sqrt
                (f64x2.mul (local.get $q) (f64x2.add (local.get $q) (f64x2.splat (f64.const 2)))))))
          (v128.store (local.get $cloth) (local.get $u))
          (local.set $ks (i32.add (local.get $ks) (i32.const 16))))
        (else (local.set $u (v128.load (local.get $cloth)))))
      (local.set $own (v128.load offset=16 (local.get $film)))
      (local.set $m (f64x2.sub (local.get $u) (local.get $own)))
      (local.set $n
        (f64x2.add (f64x2.mul (local.get $own) (local.get $m)) (v128.load (local.get $film))))
      (local.set $seen
        (f64x2.div
          (f64x2.mul (local.get $n)
            (f64x2.sub
              (f64x2.mul (f64x2.splat (local.get $both)) (local.get $m))
              (f64x2.mul (f64x2.splat (local.get $inside)) (local.get $n))))
          (f64x2.mul (local.get $m)
            (f64x2.sub (local.get $m) (f64x2.mul (f64x2.splat (local.get $k2)) (local.get $n))))))
      (local.set $x
        (f64x2.add (local.get $x) (f64x2.mul (local.get $seen) (v128.load (local.get $weights)))))
      (local.set $y
        (f64x2.add (local.get $y)
          (f64x2.mul (local.get $seen) (v128.load offset=16 (local.get $weights)))))
      (local.set $z
        (f64x2.add (local.get $z)
          (f64x2.mul (local.get $seen) (v128.load offset=32 (local.get $weights)))))
      (local.set $film (i32.add (local.get $film) (i32.const 32)))
      (local.set $weights (i32.add (local.get $weights) (i32.const 48)))
      (br_if $bands
        (i32.lt_u
          (local.tee $cloth (i32.add (local.get $cloth) (i32.const 16)))
          (local.get $end))))
    (f64.store (local.get $out)
      (f64.add (f64x2.extract_lane 0 (local.get $x)) (f64x2.extract_lane 1 (local.get $x))))
    (f64.store offset=256 (local.get $out)
      (f64.add (f64x2.extract_lane 0 (local.get $y)) (f64x2.extract_lane 1 (local.get $y))))
    (f64.store offset=512 (local.get $out)
      (f64.add (f64x2.extract_lane 0 (local.get $z)) (f64x2.extract_lane 1 (local.get $z)))))

  ;; `seenGroups` for `count` films, one after the other from `films` on, over cloth wetted by each of the factors (8 bytes each)
  ;; from `factors` up to `end`, their sums one after the other; with `ks` 0 over cloth that is wetted already, once.
  (func (export "seenOverEach")
    (param $factors i32) (param $end i32) (param $films i32) (param $count i32)
    (param $ks i32) (param $cloth i32) (param $weights i32) (param $out i32)
    (param $both f64) (param $inside f64) (param $k2 f64) (param $bytes i32)
    (local $film i32) (local $left i32) (local $wetting i32)
    (loop $wettings
      (local.set $film (local.get $films))
      (local.set $left (local.get $count))
      (local.set $wetting (local.get $ks))
      (loop $each
        (call $seenGroups
          (local.get $wetting) (f64.load (local.get $factors)) (local.get $cloth) (local.get $film)
          (local.get $weights) (local.get $out) (local.get $both) (local.get $inside) (local.get $k2)
          (local.get $bytes))
        (local.set $wetting (i32.const 0))
        (local.set $film (i32.add (local.get $film) (i32.shl (local.get $bytes) (i32.const 1))))
        (local.set $out (i32.add (local.get $out) (i32.const 8)))
        (br_if $each (local.tee $left (i32.sub (local.get $left) (i32.const 1)))))
      (br_if $wettings
        (i32.lt_u
          (local.tee $factors (i32.add (local.get $factors) (i32.const 8)))
          (local.get $end)))))

  ;; f of CIELAB (ISO/CIE 11664-4) of scale times each number from `at` up to `end`, plus offset, written over them: the cube
  ;; root above (6/29)^3, below it the straight line that meets it. The root begins at a third of the
  ;; number's exponent and leading digits, 6 % off at most, and takes two steps of Halley's method, each of which leaves two
  ;; thirds of the cube of what was missing (the start from memory of widely used C libraries).
  (func (export "compress")
    (param $at i32) (param $end i32) (param $scale f64) (param $offset f64)
    (local $ratio v128) (local $root v128) (local $cube v128)
    (loop $pairs
      (local.set $ratio
        (f64x2.add (f64x2.splat (local.get $offset))
          (f64x2.mul (f64x2.splat (local.get $scale)) (v128.load (local.get $at)))))
      (local.set $root
        (i32x4.trunc_sat_f64x2_s_zero
          (f64x2.add (f64x2.splat (f64.const 715094163))
            (f64x2.mul (f64x2.splat (f64.const 0.3333333333333333))
              (f64x2.convert_low_i32x4_s
                (i8x16.shuffle 4 5 6 7 12 13 14 15 4 5 6 7 12 13 14 15
                  (local.get $ratio) (local.get $ratio)))))))
      (local.set $root
        (i8x16.shuffle 16 17 18 19 0 1 2 3 20 21 22 23 4 5 6 7
          (local.get $root) (v128.const i32x4 0 0 0 0)))
      (local.set $cube (f64x2.mul (local.get $root) (f64x2.mul (local.get $root) (local.get $root))))
      (local.set $root
        (f64x2.div
          (f64x2.mul (local.get $root)
            (f64x2.add (local.get $cube) (f64x2.add (local.get $ratio) (local.get $ratio))))
          (f64x2.add (local.get $ratio) (f64x2.add (local.get $cube) (local.get $cube)))))
      (local.set $cube (f64x2.mul (local.get $root) (f64x2.mul (local.get $root) (local.get $root))))
      (local.set $root
        (f64x2.div
          (f64x2.mul (local.get $root)
            (f64x2.add (local.get $cube) (f64x2.add (local.get $ratio) (local.get $ratio))))
          (f64x2.add (local.get $ratio) (f64x2.add (local.get $cube) (local.get $cube)))))
      (v128.store (local.get $at)
        (v128.bitselect
          (local.get $root)
          (f64x2.add (f64x2.splat (f64.const 0.13793103448275862))
            (f64x2.mul (f64x2.splat (f64.const 7.787037037037037)) (local.get $ratio)))
          (f64x2.gt (local.get $ratio) (f64x2.splat (f64.const 0.008856451679035631)))))
      (br_if $pairs
        (i32.lt_u
          (local.tee $at (i32.add (local.get $at) (i32.const 16)))
          (local.get $end)))))

  ;; How far the hue of each colour is shifted from that of the bare cloth, a* `a`, b* `b` and C*ab `chroma`: f of X, Y and Z
  ;; lies at `at` and 256 and 512 bytes on, pair by pair up to `end`. |dH*ab| = sqrt(2 (C1 C2 - a1 a2 - b1 b2)) is written over
  ;; f of X; over f of Z sqrt(C2 / C1), held within `least` and `most`, over `error`: one over the width of an error of
  ;; that size across the hue of the print.
  (func (export "hueShifts")
    (param $at i32) (param $end i32) (param $a f64) (param $b f64) (param $chroma f64)
    (param $error f64) (param $least f64) (param $most f64)
    (local $y v128) (local $a2 v128) (local $b2 v128) (local $c2 v128)
    (loop $pairs
      (local.set $y (v128.load offset=256 (local.get $at)))
      (local.set $a2
        (f64x2.mul (f64x2.splat (f64.const 500)) (f64x2.sub (v128.load (local.get $at)) (local.get $y))))
      (local.set $b2
        (f64x2.mul (f64x2.splat (f64.const 200))
          (f64x2.sub (local.get $y) (v128.load offset=512 (local.get $at)))))
      (local.set $c2
        (f64x2.sqrt
          (f64x2.add (f64x2.mul (local.get $a2) (local.get $a2)) (f64x2.mul (local.get $b2) (local.get $b2)))))
      (v128.store (local.get $at)
        (f64x2.sqrt
          (f64x2.mul (f64x2.splat (f64.const 2))
            (f64x2.max (f64x2.splat (f64.const 0))
              (f64x2.sub
                (f64x2.mul (f64x2.splat (local.get $chroma)) (local.get $c2))
                (f64x2.add
                  (f64x2.mul (f64x2.splat (local.get $a)) (local.get $a2))
                  (f64x2.mul (f64x2.splat (local.get $b)) (local.get $b2))))))))
      (v128.store offset=512 (local.get $at)
        (f64x2.div
          (f64x2.pmin (f64x2.splat (local.get $most))
            (f64x2.pmax (f64x2.splat (local.get $least))
              (f64x2.sqrt (f64x2.div (local.get $c2) (f64x2.splat (local.get $chroma))))))
          (f64x2.splat (local.get $error))))
      (br_if $pairs
        (i32.lt_u
          (local.tee $at (i32.add (local.get $at) (i32.const 16)))
          (local.get $end)))))

  ;; Values of a fitted surface (responseSurface: 4 x 4 coefficients of x^i y^j, row by row, at `surface`) at `pairs` pairs of
  ;; points, x at `xs` and y at `ys`, into `out`.
  (func (export "surfaceAt")
    (param $surface i32) (param $xs i32) (param $ys i32) (param $out i32) (param $pairs i32)
    (local $row i32) (local $x v128) (local $y v128) (local $value v128)
    (loop $points
      (local.set $x (v128.load (local.get $xs)))
      (local.set $y (v128.load (local.get $ys)))
      (local.set $value (f64x2.splat (f64.const 0)))
      (local.set $row (i32.add (local.get $surface) (i32.const 96)))
      (loop $rows
        (local.set $value
          (f64x2.add
            (f64x2.mul (local.get $value) (local.get $x))
            (f64x2.add (v128.load64_splat (local.get $row))
              (f64x2.mul (local.get $y)
                (f64x2.add (v128.load64_splat offset=8 (local.get $row))
                  (f64x2.mul (local.get $y)
                    (f64x2.add (v128.load64_splat offset=16 (local.get $row))
                      (f64x2.mul (local.get $y) (v128.load64_splat offset=24 (local.get $row))))))))))
        (br_if $rows
          (i32.ge_s
            (local.tee $row (i32.sub (local.get $row) (i32.const 32)))
            (local.get $surface))))
      (v128.store (local.get $out) (local.get $value))
      (local.set $xs (i32.add (local.get $xs) (i32.const 16)))
      (local.set $ys (i32.add (local.get $ys) (i32.const 16)))
      (local.set $out (i32.add (local.get $out) (i32.const 16)))
      (br_if $points (local.tee $pairs (i32.sub (local.get $pairs) (i32.const 1))))))
)

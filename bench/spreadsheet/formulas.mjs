/**
 * EN 1992-4:2018 for a group of 2 x 2 inserts in a rectangular panel, as an engineer writes it in a spreadsheet: one cell a
 * quantity, what the load does not touch once, the rest once a combination. mm, N, MPa.
 *
 * Inserts: A (near the left and bottom edge), B (right of A), C (above A), D (above B). The sheet holds while all four are
 * pulled and sheared one way round, no third edge is within reach of the cone, only the left edge is near enough for a
 * blow-out, and the two inserts of a row act together. The benchmark keeps to that.
 */

/** Inputs that change from case to case: strength and place of the group. */
export const CHANGING = ['f_ck', 'x_0', 'y_0', 's_x', 's_y'];

/** Inputs that stay. */
export const CONSTANTS = {
  width: 700,
  height: 600,
  h: 160,
  h_ef: 100,
  d: 24,
  d_h: 44,
  t_h: 6,
  A5: 14,
  bolt_A: 157,
  bolt_fu: 800,
  bolt_fy: 640,
  body_A: 210,
  body_fu: 690,
  body_fy: 550,
  gamma_Mc: 1.5,
  c_cr_sp: 200,
  h_min: 150,
  cracked: 1,
  dense: 0,
  stirrups: 1,
  stirrup_spacing: 80,
};

/** Inputs of one combination, four inserts with three forces each. */
export const LOADS = ['A', 'B', 'C', 'D'].flatMap((id) => [`N_${id}`, `Vx_${id}`, `Vy_${id}`]);

/**
 * The four edges in shear: the two inserts of the front row and of the row behind it, both in order along the edge; the part
 * of a force toward the edge and along it; the front row's distance and how far the row behind stands from it.
 */
const EDGES = [
  { name: 'left', front: ['A', 'C'], behind: ['B', 'D'], toward: '-Vx', along: 'Vy', c_1: 'c_left', gap: 's_x' },
  { name: 'right', front: ['B', 'D'], behind: ['A', 'C'], toward: 'Vx', along: 'Vy', c_1: 'c_right', gap: 's_x' },
  { name: 'bottom', front: ['A', 'B'], behind: ['C', 'D'], toward: '-Vy', along: 'Vx', c_1: 'c_bottom', gap: 's_y' },
  { name: 'top', front: ['C', 'D'], behind: ['A', 'B'], toward: 'Vy', along: 'Vx', c_1: 'c_top', gap: 's_y' },
];

/** The rows of every edge; the load of all four inserts reaches the front row, the row behind is checked for its own. */
const ROWS = EDGES.flatMap(({ name, front, behind, toward, along, c_1, gap }) => {
  const across = gap === 's_x';
  const shared = {
    toward,
    along,
    spacing: across ? 's_y' : 's_x',
    corners: across ? ['c_bottom', 'c_top'] : ['c_left', 'c_right'],
  };
  return [
    { ...shared, name, inserts: front, c_1, all: toward.replace('V', 'V_'), ahead: null },
    { ...shared, name: `${name}_behind`, inserts: behind, c_1: `${c_1}_behind`, all: null, ahead: name },
  ];
});

const PARTS = ['bolt', 'body'];

/** Formulas that the load does not touch, by name. */
export const GROUP_FORMULAS = {
  c_left: 'x_0',
  c_bottom: 'y_0',
  c_right: 'width - x_0 - s_x',
  c_top: 'height - y_0 - s_y',
  ...Object.fromEntries(EDGES.map(({ c_1, gap }) => [`${c_1}_behind`, `${c_1} + ${gap}`])),
  c_min: 'MIN(c_left, c_right, c_bottom, c_top)',

  k_7: 'IF(A5 > 8, 1, 0.8)',
  ...Object.assign({}, ...PARTS.map(listSteel)),

  k_1: 'IF(cracked = 1, 8.9, 12.7)',
  c_cr: '1.5 * h_ef',
  s_cr: '2 * c_cr',
  N0_c: 'k_1 * SQRT(f_ck) * h_ef^1.5',
  A0_c: 's_cr^2',
  L_x: 'MIN(c_left, c_cr) + MIN(s_x, s_cr) + MIN(c_right, c_cr)',
  L_y: 'MIN(c_bottom, c_cr) + MIN(s_y, s_cr) + MIN(c_top, c_cr)',
  A_c: 'L_x * L_y',
  psi_A: 'A_c / A0_c',
  psi_s: 'MIN(1, 0.7 + 0.3 * c_min / c_cr)',
  psi_re: 'IF(dense = 1, MIN(1, 0.5 + h_ef / 200), 1)',

  d_h_counted: 'MIN(d_h, 6 * t_h + d)',
  A_h: 'PI() / 4 * (d_h_counted^2 - d^2)',
  k_2: 'IF(cracked = 1, 7.5, 10.5)',
  N_Rk_p: 'k_2 * A_h * f_ck',
  N_Rd_p: 'N_Rk_p / gamma_Mc',

  s_cr_sp: '2 * c_cr_sp',
  N0_sp: 'MIN(N_Rk_p, N0_c)',
  A0_sp: 's_cr_sp^2',
  L_x_sp: 'MIN(c_left, c_cr_sp) + MIN(s_x, s_cr_sp) + MIN(c_right, c_cr_sp)',
  L_y_sp: 'MIN(c_bottom, c_cr_sp) + MIN(s_y, s_cr_sp) + MIN(c_top, c_cr_sp)',
  A_sp: 'L_x_sp * L_y_sp',
  psi_A_sp: 'A_sp / A0_sp',
  psi_s_sp: 'MIN(1, 0.7 + 0.3 * c_min / c_cr_sp)',
  psi_h_limit: 'MAX(1, ((h_ef + 1.5 * MIN(c_min, c_cr_sp)) / h_min)^(2/3))',
  psi_h_sp: 'MIN((h / h_min)^(2/3), psi_h_limit, 2)',

  k_5: 'IF(cracked = 1, 8.7, 12.2)',
  N0_cb: 'k_5 * c_left * SQRT(A_h) * SQRT(f_ck)',
  A0_cb: '(4 * c_left)^2',
  length_cb: 'MIN(2 * c_left, c_bottom) + MIN(s_y, 4 * c_left) + MIN(2 * c_left, c_top)',
  height_cb: '2 * c_left + MIN(2 * c_left, h - h_ef)',
  A_cb: 'length_cb * height_cb',
  psi_A_cb: 'A_cb / A0_cb',
  c_2_cb: 'MIN(c_bottom, c_top)',
  psi_s_cb: 'MIN(1, 0.7 + 0.3 * c_2_cb / (2 * c_left))',
  psi_g_cb: 'MAX(1, SQRT(2) + (1 - SQRT(2)) * s_y / (4 * c_left))',

  k_8: 'IF(h_ef < 60, 1, 2)',

  k_9: 'IF(cracked = 1, 1.7, 2.4)',
  l_f: 'MIN(h_ef, IF(d <= 24, 12 * d, MAX(8 * d, 300)))',
  ...Object.assign({}, ...ROWS.map(listRow)),
};

function listSteel(part) {
  const [A, fu, fy] = [`${part}_A`, `${part}_fu`, `${part}_fy`];
  return {
    [`N_Rk_s_${part}`]: `${A} * ${fu}`,
    [`gamma_N_${part}`]: `MAX(1.4, 1.2 * ${fu} / ${fy})`,
    [`N_Rd_s_${part}`]: `N_Rk_s_${part} / gamma_N_${part}`,
    [`k_6_${part}`]: `IF(${fu} <= 500, 0.6, 0.5)`,
    [`V_Rk_s_${part}`]: `k_7 * k_6_${part} * ${A} * ${fu}`,
    [`gamma_V_${part}`]: `IF(AND(${fu} <= 800, ${fy} / ${fu} <= 0.8), MAX(1.25, ${fu} / ${fy}), 1.5)`,
    [`V_Rd_s_${part}`]: `V_Rk_s_${part} / gamma_V_${part}`,
  };
}

function listRow({ name, c_1, corners: [first, second], spacing }) {
  const n = (symbol) => `${symbol}_${name}`;
  return {
    [n('c_2')]: `MIN(${first}, ${second})`,
    [n('c_2_max')]: `MAX(${first}, ${second})`,
    [n('c_1')]:
      `IF(AND(${n('c_2_max')} < 1.5 * ${c_1}, h < 1.5 * ${c_1}), ` +
      `MIN(${c_1}, MAX(${n('c_2_max')} / 1.5, h / 1.5, ${spacing} / 3)), ${c_1})`,
    [n('alpha')]: `0.1 * SQRT(l_f / ${n('c_1')})`,
    [n('beta')]: `0.1 * (d / ${n('c_1')})^0.2`,
    [n('V0_c')]: `k_9 * d^${n('alpha')} * l_f^${n('beta')} * SQRT(f_ck) * ${n('c_1')}^1.5`,
    [n('A0_cV')]: `4.5 * ${n('c_1')}^2`,
    [n('reach')]: `1.5 * ${n('c_1')}`,
    [n('length')]: `MIN(${n('reach')}, ${first}) + MIN(${spacing}, 2 * ${n('reach')}) + MIN(${n('reach')}, ${second})`,
    [n('depth')]: `MIN(h, ${n('reach')})`,
    [n('A_cV')]: `${n('length')} * ${n('depth')}`,
    [n('psi_A')]: `${n('A_cV')} / ${n('A0_cV')}`,
    [n('psi_s')]: `MIN(1, 0.7 + 0.3 * ${n('c_2')} / ${n('reach')})`,
    [n('psi_h')]: `MAX(1, SQRT(${n('reach')} / h))`,
    [n('psi_re')]: `IF(AND(stirrups = 1, cracked = 1, stirrup_spacing <= MIN(100, 2 * ${c_1})), 1.4, 1)`,
  };
}

/** Formulas of one combination, by name; the ratios of the modes and `governing` are what is read. */
export const COMBINATION_FORMULAS = {
  N: 'N_A + N_B + N_C + N_D',
  N_max: 'MAX(N_A, N_B, N_C, N_D)',
  x_N: '(N_B + N_D) / N * s_x',
  y_N: '(N_C + N_D) / N * s_y',
  e_x: 'ABS(x_N - s_x / 2)',
  e_y: 'ABS(y_N - s_y / 2)',
  ...Object.fromEntries(['A', 'B', 'C', 'D'].map((id) => [`V_${id}`, `SQRT(Vx_${id}^2 + Vy_${id}^2)`])),
  V_max: 'MAX(V_A, V_B, V_C, V_D)',

  ...Object.fromEntries(PARTS.map((part) => [`steel_tension_${part}`, `N_max / N_Rd_s_${part}`])),

  psi_ec_x: '1 / (1 + 2 * e_x / s_cr)',
  psi_ec_y: '1 / (1 + 2 * e_y / s_cr)',
  N_Rk_c: 'N0_c * psi_A * psi_s * psi_re * psi_ec_x * psi_ec_y',
  N_Rd_c: 'N_Rk_c / gamma_Mc',
  cone: 'N / N_Rd_c',

  pull_out: 'N_max / N_Rd_p',

  N_front: 'N_A + N_C',
  y_cb: 'N_C / N_front * s_y',
  e_cb: 'ABS(y_cb - s_y / 2)',
  psi_ec_cb: '1 / (1 + 2 * e_cb / (4 * c_left))',
  N_Rk_cb: 'N0_cb * psi_A_cb * psi_s_cb * psi_g_cb * psi_ec_cb',
  N_Rd_cb: 'N_Rk_cb / gamma_Mc',
  blow_out: 'N_front / N_Rd_cb',

  psi_ec_x_sp: '1 / (1 + 2 * e_x / s_cr_sp)',
  psi_ec_y_sp: '1 / (1 + 2 * e_y / s_cr_sp)',
  N_Rk_sp: 'N0_sp * psi_A_sp * psi_s_sp * psi_re * psi_ec_x_sp * psi_ec_y_sp * psi_h_sp',
  N_Rd_sp: 'N_Rk_sp / gamma_Mc',
  splitting: 'N / N_Rd_sp',

  ...Object.fromEntries(PARTS.map((part) => [`steel_shear_${part}`, `V_max / V_Rd_s_${part}`])),

  V_x: 'Vx_A + Vx_B + Vx_C + Vx_D',
  V_y: 'Vy_A + Vy_B + Vy_C + Vy_D',
  V: 'SQRT(V_x^2 + V_y^2)',
  T: 's_x / 2 * (Vy_B + Vy_D - Vy_A - Vy_C) - s_y / 2 * (Vx_C + Vx_D - Vx_A - Vx_B)',
  e_V_x: 'ABS(T * V_y / V^2)',
  e_V_y: 'ABS(T * V_x / V^2)',
  psi_ec_line: '1 / (1 + 2 * e_V_x / s_cr) / (1 + 2 * e_V_y / s_cr)',
  V_shares: 'V_A + V_B + V_C + V_D',
  e_share_x: 'ABS((V_B + V_D) / V_shares * s_x - s_x / 2)',
  e_share_y: 'ABS((V_C + V_D) / V_shares * s_y - s_y / 2)',
  psi_ec_share: '1 / (1 + 2 * e_share_x / s_cr) / (1 + 2 * e_share_y / s_cr)',
  psi_ec_cp: 'MIN(psi_ec_line, psi_ec_share)',
  V_Rk_cp: 'k_8 * N0_c * psi_A * psi_s * psi_re * psi_ec_cp',
  V_Rd_cp: 'V_Rk_cp / gamma_Mc',
  pry_out: 'V / V_Rd_cp',

  ...Object.assign({}, ...ROWS.map(listRowLoad)),

  ...Object.fromEntries(PARTS.flatMap(listInteractions)),
  steel_together: `MAX(${PARTS.flatMap((part) => ['A', 'B', 'C', 'D'].map((id) => `together_${part}_${id}`)).join(', ')})`,
  n_concrete: 'MAX(cone, pull_out, blow_out, splitting)',
  v_concrete: `MAX(pry_out, ${ROWS.map(({ name }) => `edge_${name}`).join(', ')})`,
  concrete_together: '(n_concrete^1.5 + v_concrete^1.5)^(2/3)',
  governing: `MAX(steel_tension_bolt, steel_tension_body, steel_shear_bolt, steel_shear_body, n_concrete, v_concrete, steel_together, concrete_together)`,
};

function listRowLoad({ name, inserts, toward, along, spacing, all, ahead }) {
  const n = (symbol) => `${symbol}_${name}`;
  const part = (direction, id) => `${direction}_${id}`;
  const positive = (id) => `MAX(0, ${part(toward, id)})`;
  const share = (id) => `${positive(id)} * ${n('V_toward')} + ABS(${part(along, id)}) * ${n('V_along')}`;
  const [p, q] = inserts;
  const ratio = `${n('V_edge')} / ${n('V_Rd_c')}`;
  return {
    [n('V_front')]: `${positive(p)} + ${positive(q)}`,
    [n('V_toward')]: `MAX(0, ${all ?? `${part(toward, p)} + ${part(toward, q)}`}, ${n('V_front')})`,
    [n('V_along')]: `ABS(${part(along, p)}) + ABS(${part(along, q)})`,
    [n('V_edge')]: `SQRT(${n('V_toward')}^2 + ${n('V_along')}^2)`,
    [n('share_1')]: share(p),
    [n('share_2')]: share(q),
    [n('share')]: `${n('share_1')} + ${n('share_2')}`,
    [n('at_V')]: `IF(${n('share')} > 0, ${n('share_2')} / ${n('share')} * ${spacing}, ${spacing} / 2)`,
    [n('e_V')]: `ABS(${n('at_V')} - ${spacing} / 2)`,
    [n('psi_ec')]: `1 / (1 + 2 * ${n('e_V')} / (3 * ${n('c_1')}))`,
    [n('alpha_V')]: `ATAN2(${n('V_toward')}, ${n('V_along')})`,
    [n('psi_alpha')]: `SQRT(1 / (COS(${n('alpha_V')})^2 + (0.5 * SIN(${n('alpha_V')}))^2))`,
    [n('V_Rk_c')]: ['V0_c', 'psi_A', 'psi_s', 'psi_h', 'psi_ec', 'psi_alpha', 'psi_re'].map(n).join(' * '),
    [n('V_Rd_c')]: `${n('V_Rk_c')} / gamma_Mc`,
    // A row behind counts only where it carries more by itself than the row before it.
    [`edge_${name}`]: ahead === null ? ratio : `IF(${n('V_edge')} > V_edge_${ahead}, ${ratio}, 0)`,
  };
}

function listInteractions(part) {
  return ['A', 'B', 'C', 'D'].flatMap((id) => [
    [`n_${part}_${id}`, `N_${id} / N_Rd_s_${part}`],
    [`v_${part}_${id}`, `V_${id} / V_Rd_s_${part}`],
    [`together_${part}_${id}`, `n_${part}_${id}^2 + v_${part}_${id}^2`],
  ]);
}
